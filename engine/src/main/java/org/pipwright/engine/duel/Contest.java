package org.pipwright.engine.duel;

import java.io.Serializable;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/** What a duel is about. */
public sealed interface Contest extends Serializable {
    /**
     * What the first game is played for.
     *
     * @return stakes, seen from the side on roll
     */
    Stakes stakes();

    /**
     * How both sides judge a game with the cube.
     *
     * @param stakes the game's, seen from the side on roll
     * @return terms for one thread
     * @throws IllegalStateException if there is no cube
     */
    CubeTerms terms(Stakes stakes);

    /**
     * Where each game begins.
     *
     * @return an unfinished position
     */
    default Position start() {
        return Position.start();
    }

    /**
     * Whether the first roll of each game is that of a new game, which is never a double.
     *
     * @return false if it is like any other
     */
    default boolean openingRoll() {
        return true;
    }

    /**
     * Whether the cube is in play.
     *
     * @return false if players need not judge it
     */
    default boolean withCube() {
        return !(stakes() instanceof CubelessStakes);
    }

    /**
     * Games without the cube: 1 point, for a gammon 2, for a backgammon 3.
     *
     * @param start position each game begins with, unfinished
     * @param openingRoll whether the first roll is that of a new game
     */
    record Cubeless(Position start, boolean openingRoll) implements Contest {
        /** Whole games. */
        public static final Cubeless FULL_GAMES = new Cubeless(Position.start(), true);

        /**
         * Checks the position.
         *
         * @param start unfinished position
         * @param openingRoll whether the first roll is never a double
         * @throws IllegalArgumentException if the position is finished
         */
        public Cubeless {
            if (start.finished()) {
                throw new IllegalArgumentException("the starting position is finished: nothing can be played");
            }
        }

        @Override
        public Stakes stakes() {
            return new CubelessStakes();
        }

        @Override
        public CubeTerms terms(Stakes game) {
            throw new IllegalStateException("a game without the cube has none to judge");
        }
    }

    /**
     * Games with the cube whose points are counted one by one.
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
        public Stakes stakes() {
            return new MatchStakes(MatchScore.ofLength(length));
        }

        @Override
        public CubeTerms terms(Stakes game) {
            return new MatchTerms((MatchStakes) game, table);
        }
    }
}
