package org.pipwright.engine.duel;

import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;

/** What a duel with the cube is about. */
public sealed interface Contest {
    /**
     * How both sides judge a game.
     *
     * @param stakes the game's, seen from the side on roll
     * @return terms for one thread
     */
    CubeTerms terms(Stakes stakes);

    /**
     * Games whose points are counted one by one.
     *
     * @param stakes the rules agreed on
     */
    record Money(MoneyStakes stakes) implements Contest {
        @Override
        public CubeTerms terms(Stakes game) {
            return new MoneyTerms((MoneyStakes) game, null);
        }
    }

    /**
     * Matches.
     *
     * @param length points that win one
     * @param table chances at each score, by which both sides play
     */
    record Match(int length, MatchTable table) implements Contest {
        /**
         * Checks the length.
         *
         * @param length points that win a match, from 1 to the table's length
         * @param table chances at each score
         * @throws IllegalArgumentException if the table does not reach so far
         */
        public Match {
            if (length < 1 || length > table.length()) {
                throw new IllegalArgumentException("a match goes to 1 to " + table.length()
                        + " points, where the match table ends, not to " + length
                        + ": play a shorter match or give a longer table");
            }
        }

        @Override
        public CubeTerms terms(Stakes game) {
            return new MatchTerms((MatchStakes) game, table);
        }
    }
}
