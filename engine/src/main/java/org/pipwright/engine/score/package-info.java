/** What games are worth: match scores and the Crawford sequence. */
package org.pipwright.engine.score;
