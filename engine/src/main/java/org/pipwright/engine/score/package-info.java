/** What games are worth: match scores, the Crawford sequence, and sessions of money games. */
package org.pipwright.engine.score;
