package org.pipwright.engine.matchtable;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.BitSet;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.position.Planes;

/**
 * The arrangements that rolls can make of a side's last checkers, read from a file that comes with the program: to work them
 * out takes longer than most questions. A result is left out there only if another one of the roll is proved to be at least
 * as good whatever the other side does, at any score and with any cube; tests hold the file against the proofs. Immutable.
 *
 * <p>Fewer pips do not prove it: a gap closed can be worth more, since dice must be played. With 6-2-1-1 a side wins more
 * often than with 6-1-1-1.
 */
final class EndingPlays {
    /** All there are: at most six checkers on the six home points. */
    static final EndingPlays ALL = new EndingPlays(EndgameTables.LAST_SIX);

    /** {@link EndingRolls#read} of every arrangement but that no checker is left. */
    static final String FILE = "ending-plays.bin";

    private final SideIndex index;
    private final int[] pips;

    /** All arrangements, those with fewer pips first. */
    private final int[] order;

    private final EndingRolls[] results;

    private EndingPlays(SideIndex index) {
        this.index = index;
        pips = new int[index.size()];
        results = new EndingRolls[pips.length];
        int[] planes = new int[Planes.SIDE];
        for (int i = 0; i < pips.length; i++) {
            index.write(i, planes, 0);
            pips[i] = Planes.pips(planes, 0);
        }
        order = inOrder(pips);
        try (DataInputStream in =
                new DataInputStream(new BufferedInputStream(EndingPlays.class.getResourceAsStream(FILE)))) {
            for (int i = 1; i < results.length; i++) {
                results[i] = EndingRolls.read(in);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int[] inOrder(int[] pips) {
        int[] order = new int[pips.length];
        int next = 0;
        for (int each = 0; next < order.length; each++) {
            for (int i = 0; i < pips.length; i++) {
                if (pips[i] == each) {
                    order[next++] = i;
                }
            }
        }
        return order;
    }

    SideIndex index() {
        return index;
    }

    int pips(int arrangement) {
        return pips[arrangement];
    }

    /** What rolls can make of an arrangement other than 0. */
    EndingRolls of(int arrangement) {
        return results[arrangement];
    }

    /** What any roll can make of any of some arrangements; a side that is off is left out. */
    BitSet after(BitSet arrangements) {
        BitSet all = new BitSet(pips.length);
        for (int a = arrangements.nextSetBit(0); a >= 0; a = arrangements.nextSetBit(a + 1)) {
            all.or(of(a).after());
        }
        return all;
    }

    /** Some arrangements, those with fewer pips first. */
    int[] inOrder(BitSet arrangements) {
        int[] some = new int[arrangements.cardinality()];
        int next = 0;
        for (int arrangement : order) {
            if (arrangements.get(arrangement)) {
                some[next++] = arrangement;
            }
        }
        return some;
    }
}
