package org.pipwright.engine.record;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** One line of a recorded game. Sides are 0 for the first player named and 1 for the second. */
@PublicApi
public sealed interface Entry {
    /**
     * A comment on the line, or on the game.
     *
     * @return one line without control characters; empty if there is nothing
     */
    String note();

    /**
     * A roll and how it was played.
     *
     * @param side who, 0 or 1
     * @param roll the dice
     * @param play the play
     * @param note something said about it, or nothing
     */
    record Turn(int side, Roll roll, Play play, String note) implements Entry {
        /**
         * Checks the note.
         *
         * @param side who
         * @param roll the dice
         * @param play the play
         * @param note something said about it
         */
        public Turn {
            Notes.check(note);
        }
    }

    /**
     * A double, or an answer to one.
     *
     * @param side who, 0 or 1
     * @param action double, take, pass or beaver
     * @param note something said about it, or nothing
     */
    record Cube(int side, CubeAction action, String note) implements Entry {
        /**
         * Checks action and note.
         *
         * @param side who
         * @param action double, take, pass or beaver
         * @param note something said about it
         */
        public Cube {
            Notes.check(note);
            if (action == CubeAction.ROLL) {
                throw new IllegalArgumentException("rolling without a double is no entry of its own");
            }
        }
    }

    /**
     * A game given up.
     *
     * @param side who gives up, 0 or 1
     * @param result what the other side wins
     * @param note something said about it, or nothing
     */
    record Resignation(int side, GameResult result, String note) implements Entry {
        /**
         * Checks the note.
         *
         * @param side who gives up
         * @param result what the other side wins
         * @param note something said about it
         */
        public Resignation {
            Notes.check(note);
        }
    }

    /**
     * A line that is only a comment.
     *
     * @param note what it says
     */
    record Remark(String note) implements Entry {
        /**
         * Checks the note.
         *
         * @param note what it says
         */
        public Remark {
            Notes.check(note);
        }
    }
}
