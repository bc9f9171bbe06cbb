/** Why one play is better than another, as facts: points, blots, primes, the race, chances, the opponent's rolls. */
package org.pipwright.engine.explain;
