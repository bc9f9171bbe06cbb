package org.pipwright.engine.matchtable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.pipwright.engine.roll.Roll;

/**
 * What the rolls can make of an arrangement of a side's last checkers. Rolls that leave the same are taken together, those
 * that leave no choice apart from the others, so that a solver has the least to do. Arrays belong to this class's readers
 * too, which do not change them.
 */
final class EndingRolls {
    private final int[][] byRoll;
    private final int[][] choices;
    private final int[] choiceWays;
    private final int[] sure;
    private final int[] sureWays;
    private final BitSet after = new BitSet();
    private final double mean;

    /**
     * From the results of every roll.
     *
     * @param byRoll by its index, none of them empty and each without repetitions
     * @param mean rolls that a side needs which wants to need few in the mean
     */
    EndingRolls(int[][] byRoll, double mean) {
        this.byRoll = byRoll;
        this.mean = mean;
        List<int[]> distinct = new ArrayList<>();
        int[] ways = new int[Roll.COUNT];
        for (Roll roll : Roll.all()) {
            int[] results = byRoll[roll.index()];
            Arrays.sort(results);
            int place = 0;
            while (place < distinct.size() && !Arrays.equals(distinct.get(place), results)) {
                place++;
            }
            if (place == distinct.size()) {
                distinct.add(results);
            }
            ways[place] += roll.ways();
        }
        int alone =
                (int) distinct.stream().filter(results -> results.length == 1).count();
        sure = new int[alone];
        sureWays = new int[alone];
        choices = new int[distinct.size() - alone][];
        choiceWays = new int[choices.length];
        int one = 0;
        int more = 0;
        for (int i = 0; i < distinct.size(); i++) {
            int[] results = distinct.get(i);
            Arrays.stream(results).filter(result -> result != 0).forEach(after::set);
            if (results.length == 1) {
                sure[one] = results[0];
                sureWays[one++] = ways[i];
            } else {
                choices[more] = results;
                choiceWays[more++] = ways[i];
            }
        }
    }

    /** Mean number of rolls to bear off, at least. */
    double mean() {
        return mean;
    }

    /** By the index of the roll, the results that may be best. */
    int[][] byRoll() {
        return byRoll;
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
