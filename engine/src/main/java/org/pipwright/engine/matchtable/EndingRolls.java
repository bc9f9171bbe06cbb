package org.pipwright.engine.matchtable;

import java.io.DataInputStream;
import java.io.IOException;
import java.util.BitSet;

/**
 * What the rolls can make of an arrangement of a side's last checkers. Rolls that leave the same are taken together, those
 * that leave no choice apart from the others, so that a solver has the least to do. Arrays belong to this class's readers
 * too, which do not change them.
 */
final class EndingRolls {
    private final int[][] choices;
    private final int[] choiceWays;
    private final int[] sure;
    private final int[] sureWays;
    private final BitSet after = new BitSet();

    private EndingRolls(int sure, int choices) {
        this.sure = new int[sure];
        this.sureWays = new int[sure];
        this.choices = new int[choices][];
        this.choiceWays = new int[choices];
    }

    /**
     * Reads one.
     *
     * @param in its numbers of results without a choice and of choices, a byte each; for each of the former how many throws
     *     make it, a byte, and the result, two; for each of the latter the throws, how many results there are, and these
     */
    static EndingRolls read(DataInputStream in) throws IOException {
        EndingRolls rolls = new EndingRolls(in.readUnsignedByte(), in.readUnsignedByte());
        for (int i = 0; i < rolls.sure.length; i++) {
            rolls.sureWays[i] = in.readUnsignedByte();
            rolls.sure[i] = rolls.result(in);
        }
        for (int i = 0; i < rolls.choices.length; i++) {
            rolls.choiceWays[i] = in.readUnsignedByte();
            rolls.choices[i] = new int[in.readUnsignedByte()];
            for (int k = 0; k < rolls.choices[i].length; k++) {
                rolls.choices[i][k] = rolls.result(in);
            }
        }
        return rolls;
    }

    private int result(DataInputStream in) throws IOException {
        int result = in.readUnsignedShort();
        if (result != 0) {
            after.set(result);
        }
        return result;
    }

    /** The results of rolls after which there is a choice; how many throws make each is in {@link #choiceWays}. */
    int[][] choices() {
        return choices;
    }

    /** How many of the 36 throws make each of {@link #choices}. */
    int[] choiceWays() {
        return choiceWays;
    }

    /** The results of rolls without a choice. */
    int[] sure() {
        return sure;
    }

    /** How many of the 36 throws make each of {@link #sure}. */
    int[] sureWays() {
        return sureWays;
    }

    /** All results but that no checker is left. */
    BitSet after() {
        return after;
    }
}
