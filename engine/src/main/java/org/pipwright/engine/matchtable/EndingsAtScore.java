package org.pipwright.engine.matchtable;

import java.util.BitSet;
import org.pipwright.engine.roll.Roll;

/**
 * The exact values of endings at one score by backward induction, for the pairs of arrangements that can still arise from
 * those asked about. What has been solved is kept. Shared by threads, which wait for each other.
 */
final class EndingsAtScore {
    /** Lanes are gone through four at a time, so that their values stay in registers; pairs have room for whole fours. */
    private static final int TOGETHER = 4;

    private final EndingPlays plays;
    private final EndingCubes cubes;
    private final int lanes;
    private final double[] lost;

    /** Values with the first side on roll, and with the second. */
    private final Values mine;

    private final Values theirs;
    private volatile long size;

    /** What is known with one side on roll, in rows by the arrangement of the first side. */
    private final class Values {
        final double[][] rows;
        final BitSet[] solved;

        Values(int arrangements) {
            rows = new double[arrangements][];
            solved = new BitSet[arrangements];
        }

        boolean has(int first, int second) {
            return solved[first] != null && solved[first].get(second);
        }

        double[] row(int first) {
            if (rows[first] == null) {
                rows[first] = new double[rows.length * lanes];
                solved[first] = new BitSet(rows.length);
                System.arraycopy(lost, 0, rows[first], 0, lanes);
                size += rows[first].length;
            }
            return rows[first];
        }
    }

    EndingsAtScore(EndingPlays plays, EndingCubes cubes) {
        this.plays = plays;
        this.cubes = cubes;
        lanes = (cubes.lanes() + TOGETHER - 1) / TOGETHER * TOGETHER;
        lost = new double[lanes];
        cubes.finished(false, lost);
        int arrangements = plays.index().size();
        mine = new Values(arrangements);
        theirs = new Values(arrangements);
        double[] won = new double[lanes];
        cubes.finished(true, won);
        double[] over = theirs.row(0);
        for (int second = 0; second < arrangements; second++) {
            System.arraycopy(won, 0, over, second * lanes, lanes);
        }
    }

    EndingCubes cubes() {
        return cubes;
    }

    /** Numbers held. */
    long size() {
        return size;
    }

    /**
     * The values of a pair before the side on roll decides about the cube.
     *
     * @param first arrangement of the first side, not 0
     * @param second arrangement of the second side, not 0
     * @param firstOnRoll whether the first side is on roll
     * @return all lanes of {@link #cubes()}
     */
    synchronized double[] best(int first, int second, boolean firstOnRoll) {
        solve(first, second, firstOnRoll);
        double[] out = new double[lanes];
        System.arraycopy((firstOnRoll ? mine : theirs).rows[first], second * lanes, out, 0, lanes);
        return out;
    }

    /** The same once it has decided to roll. */
    synchronized double[] rolling(int first, int second, boolean firstOnRoll) {
        solve(first, second, firstOnRoll);
        double[] out = new double[lanes];
        for (Roll roll : Roll.all()) {
            int[] results = plays.of(firstOnRoll ? first : second)[roll.index()];
            for (int lane = 0; lane < lanes; lane += TOGETHER) {
                if (firstOnRoll) {
                    addMost(theirs.rows, results, second * lanes + lane, roll.probability(), out, lane);
                } else {
                    addLeast(mine.row(first), results, lane, roll.probability(), out, lane);
                }
            }
        }
        return out;
    }

    private void solve(int first, int second, boolean firstOnRoll) {
        if ((firstOnRoll ? mine : theirs).has(first, second)) {
            return;
        }
        Reach reach = new Reach(first, second, firstOnRoll);
        int[] seconds = plays.inOrder(reach.seconds);
        for (int a : plays.inOrder(reach.firsts)) {
            if (reach.mine[a] != null) {
                rollOfFirst(a, reach.mine[a]);
            }
            if (reach.theirs[a] != null) {
                rollOfSecond(a, reach.theirs[a], seconds);
            }
        }
    }

    /** One arrangement of the first side on roll against some of the second, roll by roll: rows are read in order. */
    private void rollOfFirst(int a, BitSet wanted) {
        double[] row = mine.row(a);
        wanted.andNot(mine.solved[a]);
        for (Roll roll : Roll.all()) {
            int[] results = plays.of(a)[roll.index()];
            for (int b = wanted.nextSetBit(0); b >= 0; b = wanted.nextSetBit(b + 1)) {
                for (int at = b * lanes; at < (b + 1) * lanes; at += TOGETHER) {
                    addMost(theirs.rows, results, at, roll.probability(), row, at);
                }
            }
        }
        for (int b = wanted.nextSetBit(0); b >= 0; b = wanted.nextSetBit(b + 1)) {
            cubes.decide(row, b * lanes, true);
        }
        mine.solved[a].or(wanted);
    }

    /** The same with the second side on roll. */
    private void rollOfSecond(int a, BitSet wanted, int[] seconds) {
        double[] row = theirs.row(a);
        double[] after = mine.row(a);
        wanted.andNot(theirs.solved[a]);
        for (int b : seconds) {
            if (wanted.get(b)) {
                int[][] results = plays.of(b);
                for (Roll roll : Roll.all()) {
                    for (int lane = 0; lane < lanes; lane += TOGETHER) {
                        addLeast(after, results[roll.index()], lane, roll.probability(), row, b * lanes + lane);
                    }
                }
                cubes.decide(row, b * lanes, false);
            }
        }
        theirs.solved[a].or(wanted);
    }

    /** Adds a share of the most that some results of the first side's roll leave it, for four lanes. */
    private static void addMost(double[][] rows, int[] results, int from, double share, double[] out, int at) {
        double most0 = 0;
        double most1 = 0;
        double most2 = 0;
        double most3 = 0;
        for (int result : results) {
            double[] row = rows[result];
            most0 = row[from] > most0 ? row[from] : most0;
            most1 = row[from + 1] > most1 ? row[from + 1] : most1;
            most2 = row[from + 2] > most2 ? row[from + 2] : most2;
            most3 = row[from + 3] > most3 ? row[from + 3] : most3;
        }
        out[at] += share * most0;
        out[at + 1] += share * most1;
        out[at + 2] += share * most2;
        out[at + 3] += share * most3;
    }

    /** Adds a share of the least that some results of the second side's roll leave the first, for four lanes. */
    private void addLeast(double[] row, int[] results, int lane, double share, double[] out, int at) {
        double least0 = 1;
        double least1 = 1;
        double least2 = 1;
        double least3 = 1;
        for (int result : results) {
            int from = result * lanes + lane;
            least0 = row[from] < least0 ? row[from] : least0;
            least1 = row[from + 1] < least1 ? row[from + 1] : least1;
            least2 = row[from + 2] < least2 ? row[from + 2] : least2;
            least3 = row[from + 3] < least3 ? row[from + 3] : least3;
        }
        out[at] += share * least0;
        out[at + 1] += share * least1;
        out[at + 2] += share * least2;
        out[at + 3] += share * least3;
    }

    /** The pairs that may arise from one: both sides have then rolled as often, or the one on roll now once more. */
    private final class Reach {
        /** By the arrangement of the first side, those of the second; null where there is none. */
        final BitSet[] mine = new BitSet[plays.index().size()];

        final BitSet[] theirs = new BitSet[mine.length];
        final BitSet firsts = new BitSet();
        final BitSet seconds = new BitSet();

        Reach(int first, int second, boolean firstOnRoll) {
            BitSet a = new BitSet();
            BitSet b = new BitSet();
            a.set(first);
            b.set(second);
            for (boolean turn = firstOnRoll; !a.isEmpty() && !b.isEmpty(); turn = !turn) {
                add(turn ? mine : theirs, a, b);
                if (turn) {
                    a = plays.after(a);
                } else {
                    b = plays.after(b);
                }
            }
        }

        private void add(BitSet[] to, BitSet a, BitSet b) {
            firsts.or(a);
            seconds.or(b);
            for (int i = a.nextSetBit(0); i >= 0; i = a.nextSetBit(i + 1)) {
                to[i] = to[i] == null ? new BitSet() : to[i];
                to[i].or(b);
            }
        }
    }
}
