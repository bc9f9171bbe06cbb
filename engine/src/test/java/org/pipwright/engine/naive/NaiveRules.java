package org.pipwright.engine.naive;

/** Facts about a board, each written straight from its definition. */
public final class NaiveRules {
    private NaiveRules() {}

    /** The mover's pip count: the bar counts 25. */
    public static int pips(NaiveBoard board) {
        int pips = 0;
        for (int place = 1; place <= NaiveBoard.BAR; place++) {
            pips += place * board.mine(place);
        }
        return pips;
    }

    /** The mover's checkers, those borne off included. */
    public static int checkers(NaiveBoard board) {
        int checkers = 0;
        for (int place = 0; place < NaiveBoard.PLACES; place++) {
            checkers += board.mine(place);
        }
        return checkers;
    }

    /** Whether some checker of one side still has to pass some checker of the other, tried pair by pair. */
    public static boolean contact(NaiveBoard board) {
        for (int place = 1; place <= NaiveBoard.BAR; place++) {
            for (int other = 1; other <= NaiveBoard.BAR; other++) {
                if (board.mine(place) > 0 && board.theirs(other) > 0 && place > 25 - other) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether the mover has borne off every checker. */
    public static boolean allOff(NaiveBoard board) {
        return board.mine(NaiveBoard.OFF) == checkers(board);
    }

    /** Whether either side has borne off every checker. */
    public static boolean finished(NaiveBoard board) {
        return allOff(board) || allOff(board.swapped());
    }

    /** Points the mover loses once the other side has borne off every checker: 1, 2 (gammon) or 3 (backgammon). */
    public static int pointsLost(NaiveBoard loser) {
        if (loser.mine(NaiveBoard.OFF) > 0) {
            return 1;
        }
        for (int place = 19; place <= NaiveBoard.BAR; place++) {
            if (loser.mine(place) > 0) {
                return 3;
            }
        }
        return 2;
    }
}
