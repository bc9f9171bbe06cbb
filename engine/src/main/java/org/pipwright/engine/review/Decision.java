package org.pipwright.engine.review;

import org.pipwright.engine.ranking.Grade;

/**
 * One choice that a side made.
 *
 * @param kind what it was about
 * @param side who made it, 0 or 1
 * @param cost value of what was done less that of the best, for that side: at most 0; points per unit of the cube, or
 *     chance to win the match
 * @param points the same in points: in a match, cost over half of what lies between winning and losing a single game with
 *     the cube as it is
 * @param total the same in what counts in the end: points of the game, or chance to win the match
 * @param counted whether it counts as a decision: there was a choice, and one that needs thought
 */
public record Decision(Kind kind, int side, double cost, double points, double total, boolean counted) {
    /** What a decision is about. */
    public enum Kind {
        /** How to play a roll; counts if there is more than one legal play. */
        PLAY,
        /**
         * Whether to double; counts if it was done, or rolling was wrong, or doubling would have cost less than what is
         * graded as heavy.
         */
        DOUBLE,
        /** How to answer a double; always counts. */
        ANSWER
    }

    /**
     * The cost in a word.
     *
     * @return the grade of {@link #points()}
     */
    public Grade grade() {
        return Grade.ofCost(points);
    }
}
