package org.pipwright.engine.regime;

import java.util.Set;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.naive.NaivePlays;
import org.pipwright.engine.naive.NaiveRules;

/** One (position, roll) pair with what the naive generator makes of it, for sorting into regimes. */
public final class RollCase {
    final NaiveBoard board;
    final int larger;
    final int smaller;
    final NaivePlays plays;
    final boolean contact;
    final int checkers;

    /** A pair and what the naive generator makes of it. */
    public RollCase(NaiveBoard board, int die, int other) {
        this.board = board;
        larger = Math.max(die, other);
        smaller = Math.min(die, other);
        plays = NaivePlayGenerator.generate(board, die, other);
        contact = NaiveRules.contact(board);
        checkers = NaiveRules.checkers(board);
    }

    /** The naive generator's results. */
    public Set<NaiveBoard> results() {
        return plays.results();
    }

    boolean isDouble() {
        return larger == smaller;
    }

    int onBar() {
        return board.mine(NaiveBoard.BAR);
    }

    boolean noPlay() {
        return plays.steps() == 0;
    }

    /** Most checkers hit by any result. */
    int mostHits() {
        int most = 0;
        for (NaiveBoard result : plays.results()) {
            most = Math.max(most, result.theirs(NaiveBoard.BAR) - board.theirs(NaiveBoard.BAR));
        }
        return most;
    }

    /** Points in a row that the other side holds in front of the mover's rearmost checker, the longest such row. */
    int primeAhead() {
        int longest = 0;
        int row = 0;
        for (int place = board.rearmost() - 1; place >= 1; place--) {
            row = board.theirs(25 - place) >= 2 ? row + 1 : 0;
            longest = Math.max(longest, row);
        }
        return longest;
    }

    /** Whether the other side holds all six points of its home. */
    boolean closedBoard() {
        for (int place = 1; place <= 6; place++) {
            if (board.theirs(place) < 2) {
                return false;
            }
        }
        return true;
    }

    /** How many of a side's 15 checkers stand where they started, the two sides together. */
    int unmoved() {
        return unmoved(board) + unmoved(board.swapped());
    }

    private static int unmoved(NaiveBoard side) {
        return Math.min(side.mine(24), 2)
                + Math.min(side.mine(13), 5)
                + Math.min(side.mine(8), 3)
                + Math.min(side.mine(6), 5);
    }
}
