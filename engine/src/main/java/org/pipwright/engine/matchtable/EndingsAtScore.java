package org.pipwright.engine.matchtable;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;

/**
 * The exact values of endings at one score by backward induction, for the pairs of arrangements that can still arise from
 * those asked about. What has been solved with the second side on roll is kept; with the first on roll it is one step
 * away, and memory is what takes the time. Shared by threads, which wait for each other.
 */
final class EndingsAtScore {
    /** From so many pairs on, processor threads share what does not depend on each other: some milliseconds' worth. */
    private static final int SHARED = 5000;

    private final EndingPlays plays;
    private final EndingCubes cubes;
    private final EndingLanes lanes;

    /** With the second side on roll, by the arrangement of the first, for all of the second. */
    private final int[][] rows;

    private final BitSet[] solved;

    /** With the first side on roll and one arrangement of it, for all of the second. */
    private final int[] now;

    private final double[] pair;
    private final EndingRolls[] rolls;
    private volatile long size;

    EndingsAtScore(EndingPlays plays, EndingCubes cubes) {
        this.plays = plays;
        this.cubes = cubes;
        int arrangements = plays.index().size();
        lanes = new EndingLanes(cubes.lanes());
        rows = new int[arrangements][];
        rolls = new EndingRolls[arrangements];
        solved = new BitSet[arrangements];
        now = new int[arrangements * lanes.width()];
        pair = new double[lanes.width()];
        cubes.finished(false, pair);
        lanes.write(pair, now, 0);
        cubes.finished(true, pair);
        rows[0] = new int[now.length];
        for (int second = 0; second < arrangements; second++) {
            lanes.write(pair, rows[0], second);
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
        double[] out = new double[lanes.width()];
        if (firstOnRoll) {
            rollOfFirst(first, second, out);
            cubes.decide(out, true);
        } else {
            solve(only(first), only(second));
            lanes.read(rows[first], second, out);
        }
        return out;
    }

    /** The same once it has decided to roll. */
    synchronized double[] rolling(int first, int second, boolean firstOnRoll) {
        double[] out = new double[lanes.width()];
        if (firstOnRoll) {
            rollOfFirst(first, second, out);
        } else {
            solve(only(first), only(second));
            rollOfFirst(first, rolls(second).after(), now, pair);
            lanes.least(rolls(second), now, out);
        }
        return out;
    }

    private EndingRolls rolls(int arrangement) {
        if (rolls[arrangement] == null) {
            rolls[arrangement] = plays.of(arrangement);
        }
        return rolls[arrangement];
    }

    private static BitSet only(int arrangement) {
        BitSet set = new BitSet();
        set.set(arrangement);
        return set;
    }

    private void rollOfFirst(int first, int second, double[] out) {
        EndingRolls of = rolls(first);
        solve(of.after(), only(second));
        lanes.most(of, pick(of.sure()), pick(of.choices()), second, out);
    }

    /** Solves the pairs of two sets with the second side on roll, and all that can follow on them. */
    private void solve(BitSet firsts, BitSet seconds) {
        if (known(firsts, seconds)) {
            return;
        }
        EndingReach reach = new EndingReach(plays, firsts, seconds);
        int[] order = reach.firsts();
        for (int from = 0; from < order.length; ) {
            int to = from + 1;
            while (to < order.length && plays.pips(order[to]) == plays.pips(order[from])) {
                to++;
            }
            solve(reach, Arrays.copyOfRange(order, from, to));
            from = to;
        }
    }

    /** Some arrangements of the first side with as many pips, none of which can follow on another. */
    private void solve(EndingReach reach, int[] alike) {
        int work = 0;
        for (int a : alike) {
            if (rows[a] == null) {
                rows[a] = new int[now.length];
                solved[a] = new BitSet();
                size += now.length;
            }
            BitSet wanted = reach.seconds(a);
            wanted.andNot(solved[a]);
            work += wanted.cardinality();
        }
        IntStream all = Arrays.stream(alike).filter(a -> !reach.seconds(a).isEmpty());
        if (work < SHARED) {
            all.forEach(a -> row(a, reach.seconds(a), now, pair));
        } else {
            all.parallel().forEach(a -> row(a, reach.seconds(a), now.clone(), pair.clone()));
        }
    }

    /** One arrangement of the first side with the second on roll, with room for the roll of the first before. */
    private void row(int a, BitSet wanted, int[] now, double[] pair) {
        rollOfFirst(a, plays.after(wanted), now, pair);
        rollOfSecond(a, wanted, now, pair);
    }

    private boolean known(BitSet firsts, BitSet seconds) {
        for (int a = firsts.nextSetBit(0); a >= 0; a = firsts.nextSetBit(a + 1)) {
            for (int b = seconds.nextSetBit(0); b >= 0; b = seconds.nextSetBit(b + 1)) {
                if (solved[a] == null || !solved[a].get(b)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** One arrangement of the first side on roll against some of the second. */
    private void rollOfFirst(int a, BitSet wanted, int[] now, double[] pair) {
        EndingRolls of = rolls(a);
        int[][] sure = pick(of.sure());
        int[][][] choices = pick(of.choices());
        for (int b = wanted.nextSetBit(0); b >= 0; b = wanted.nextSetBit(b + 1)) {
            lanes.most(of, sure, choices, b, pair);
            cubes.decide(pair, true);
            lanes.write(pair, now, b);
        }
    }

    private int[][][] pick(int[][] choices) {
        int[][][] picked = new int[choices.length][][];
        for (int i = 0; i < picked.length; i++) {
            picked[i] = pick(choices[i]);
        }
        return picked;
    }

    private int[][] pick(int[] results) {
        int[][] picked = new int[results.length][];
        for (int i = 0; i < picked.length; i++) {
            picked[i] = rows[results[i]];
        }
        return picked;
    }

    /** The same with the second side on roll, after {@link #rollOfFirst} against all that it can leave. */
    private void rollOfSecond(int a, BitSet wanted, int[] now, double[] pair) {
        for (int b = wanted.nextSetBit(0); b >= 0; b = wanted.nextSetBit(b + 1)) {
            lanes.least(rolls(b), now, pair);
            cubes.decide(pair, false);
            lanes.write(pair, rows[a], b);
        }
        solved[a].or(wanted);
    }
}
