/** Duels: paired games between two players, their statistics, the luck of rolls, the sequential test, fixed baselines. */
package org.pipwright.engine.duel;
