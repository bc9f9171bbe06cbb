package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.BitSet;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.regime.RandomBoards;

/** The facts agree with their definitions on plain counts, and take every value they should. */
class FactsTest {
    private static final int BOARDS = 10_000;

    private static Position position(NaiveBoard board) {
        return Position.ofPlanes(board.toPlanes(), 0);
    }

    /** What the opponent has on a point of the side on roll. */
    private static int theirs(NaiveBoard board, int point) {
        return board.theirs(25 - point);
    }

    private static int prime(NaiveBoard board) {
        int longest = 0;
        int row = 0;
        boolean passing = board.theirs(NaiveBoard.BAR) > 0;
        for (int point = 1; point <= 24; point++) {
            row = passing && board.mine(point) >= 2 ? row + 1 : 0;
            longest = Math.max(longest, row);
            passing |= theirs(board, point) > 0;
        }
        return longest;
    }

    private static int back(NaiveBoard board) {
        int back = 0;
        for (int place = 19; place <= 25; place++) {
            back += board.mine(place);
        }
        return back;
    }

    private static int block(NaiveBoard board) {
        int held = 0;
        for (int point = board.rearmost() - 1; point >= 1 && point >= board.rearmost() - 6; point--) {
            held += theirs(board, point) >= 2 ? 1 : 0;
        }
        return held;
    }

    private static int unmoved(NaiveBoard board) {
        int[] places = {24, 13, 8, 6};
        int[] counts = {2, 5, 3, 5};
        int unmoved = 0;
        for (int i = 0; i < places.length; i++) {
            unmoved += Math.min(counts[i], board.mine(places[i])) + Math.min(counts[i], board.theirs(places[i]));
        }
        return unmoved;
    }

    @Test
    void agree() {
        BitSet primes = new BitSet();
        BitSet backs = new BitSet();
        BitSet blocks = new BitSet();
        RandomBoards.of(31, BOARDS).forEach(board -> {
            Position position = position(board);
            assertEquals(prime(board), Facts.prime(position), board::toString);
            assertEquals(back(board), Facts.back(position), board::toString);
            assertEquals(block(board), Facts.block(position), board::toString);
            assertEquals(unmoved(board), Facts.unmoved(position), board::toString);
            assertEquals(board.rearmost(), Facts.rearmost(position), board::toString);
            primes.set(prime(board));
            backs.set(back(board));
            blocks.set(block(board));
        });
        assertEquals(8, primes.cardinality(), "primes of 0 to 7");
        assertEquals(16, backs.cardinality(), "0 to 15 checkers back");
        assertEquals(7, blocks.cardinality(), "0 to 6 points in front");
    }
}
