/** Plays of a roll ordered by equity. */
package org.pipwright.engine.ranking;
