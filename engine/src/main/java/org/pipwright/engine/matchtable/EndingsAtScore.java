package org.pipwright.engine.matchtable;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.BitSet;
import org.pipwright.engine.parallel.Crew;

/**
 * The exact values of endings at one score by backward induction, for the pairs of arrangements that can still arise from
 * those asked about. What has been solved with the second side on roll is kept; with the first on roll it is one step
 * away, and memory is what takes the time. Shared by threads, which wait for each other.
 */
final class EndingsAtScore {
    /** From so many pairs on, all processors share what does not depend on each other: some hundredths of a second's worth. */
    private static final int SHARED = 20_000;

    private final EndingPlays plays;
    private final EndingCubes cubes;
    private final EndingLanes lanes;

    /** With the second side on roll, by the arrangement of the first, for all of the second. */
    private final int[][] rows;

    private final BitSet[] solved;

    /** With the first side on roll and one arrangement of it, for all of the second. */
    private final int[] now;

    private final double[] pair;
    private volatile long size;

    /** What an earlier run has kept and is still to be read; null if there is none. */
    private EndingFile kept;

    /** Pairs solved that no file has. */
    private volatile int unkept;

    EndingsAtScore(EndingPlays plays, EndingCubes cubes) {
        this.plays = plays;
        this.cubes = cubes;
        int arrangements = plays.index().size();
        lanes = new EndingLanes(cubes.lanes());
        rows = new int[arrangements][];
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

    /** The same, going on from what a folder has kept. */
    EndingsAtScore(EndingPlays plays, EndingCubes cubes, EndingFolder folder) {
        this(plays, cubes);
        kept = folder.open(cubes, rows.length, lanes.width()).orElse(null);
        for (int a = 1; a < rows.length && kept != null; a++) {
            BitSet before = kept.solved(a);
            solved[a] = before.isEmpty() ? null : before;
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
     * Solves what will be asked about together.
     *
     * @param firsts arrangements of the first side, none of them 0
     * @param seconds arrangements of the second side, none of them 0, each against each of the first
     * @param firstOnRoll whether the first side is on roll
     */
    synchronized void expect(BitSet firsts, BitSet seconds, boolean firstOnRoll) {
        solve(firstOnRoll ? plays.after(firsts) : firsts, seconds);
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
            lanes.read(row(first), second, out);
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
            rollOfFirst(first, plays.of(second).after(), now, pair);
            lanes.least(plays.of(second), now, out);
        }
        return out;
    }

    private static BitSet only(int arrangement) {
        BitSet set = new BitSet();
        set.set(arrangement);
        return set;
    }

    private void rollOfFirst(int first, int second, double[] out) {
        EndingRolls of = plays.of(first);
        solve(of.after(), only(second));
        lanes.most(of, pick(of.sure()), pick(of.choices()), second, out);
    }

    /** Solves the pairs of two sets with the second side on roll, and all that can follow on them. */
    private void solve(BitSet firsts, BitSet seconds) {
        if (known(firsts, seconds)) {
            return;
        }
        readKept();
        EndingReach reach = new EndingReach(plays, firsts, seconds);
        int[] order = reach.firsts();
        int work = 0;
        for (int a : order) {
            prepare(a);
            reach.seconds(a).andNot(solved[a]);
            work += reach.seconds(a).cardinality();
        }
        unkept += work;
        int threads = work < SHARED ? 1 : Runtime.getRuntime().availableProcessors();
        try (Crew<Row> crew = new Crew<>(threads, Row::new)) {
            for (int from = 0; from < order.length; ) {
                int to = from + 1;
                while (to < order.length && plays.pips(order[to]) == plays.pips(order[from])) {
                    to++;
                }
                // None of these, which have as many pips, can follow on another.
                int[] alike = Arrays.copyOfRange(order, from, to);
                crew.run(alike.length, (row, task) -> row.solve(alike[task], reach));
                from = to;
            }
        }
    }

    /** The values of an arrangement of the first side. */
    private int[] row(int a) {
        if (rows[a] == null && kept != null && solved[a] != null) {
            rows[a] = kept.row(a);
            size += now.length;
        }
        return rows[a];
    }

    /** Reads all that is kept, since threads that solve may need any of it. */
    private void readKept() {
        for (int a = 1; a < rows.length && kept != null; a++) {
            row(a);
        }
        kept = null;
    }

    /** Whether so much has been solved since it was kept last that doing it again would take longer than keeping it. */
    boolean worthKeeping() {
        return unkept >= SHARED;
    }

    /**
     * Writes what has been solved.
     *
     * @param file where to
     * @throws IOException if that fails; an older file is as it was
     */
    synchronized void write(Path file) throws IOException {
        readKept();
        // Once, whether it can be written or not.
        unkept = 0;
        EndingFile.write(file, cubes, lanes.width(), solved, rows);
    }

    private void prepare(int a) {
        if (solved[a] == null) {
            solved[a] = new BitSet();
            size += now.length;
        }
    }

    /** Room for one arrangement of the first side on roll, against all of the second, and a pair; for one thread. */
    private final class Row {
        private final int[] now = EndingsAtScore.this.now.clone();
        private final double[] pair = new double[lanes.width()];

        /** One arrangement of the first side with the second on roll, with the roll of the first before. */
        void solve(int a, EndingReach reach) {
            BitSet wanted = reach.seconds(a);
            if (wanted.isEmpty()) {
                return;
            }
            if (rows[a] == null) {
                // Here, for all threads share the work of getting memory from the system.
                rows[a] = new int[now.length];
            }
            rollOfFirst(a, solved[a].isEmpty() ? reach.replies(a) : plays.after(wanted), now, pair);
            rollOfSecond(a, wanted, now, pair);
        }
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
        boolean even = cubes.even();
        EndingRolls of = plays.of(a);
        int[][] sure = pick(of.sure());
        int[][][] choices = pick(of.choices());
        for (int b = wanted.nextSetBit(0); b >= 0; b = wanted.nextSetBit(b + 1)) {
            if (even && plays.pips(b) < plays.pips(a) && solved[b] != null && solved[b].get(a)) {
                // The same pair with the sides changed over has been solved.
                lanes.mirror(row(b), a, cubes.swapped(), now, b);
            } else {
                lanes.most(of, sure, choices, b, pair);
                cubes.decide(pair, true);
                lanes.write(pair, now, b);
            }
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
            picked[i] = row(results[i]);
        }
        return picked;
    }

    /** The same with the second side on roll, after {@link #rollOfFirst} against all that it can leave. */
    private void rollOfSecond(int a, BitSet wanted, int[] now, double[] pair) {
        for (int b = wanted.nextSetBit(0); b >= 0; b = wanted.nextSetBit(b + 1)) {
            lanes.least(plays.of(b), now, pair);
            cubes.decide(pair, false);
            lanes.write(pair, rows[a], b);
        }
        solved[a].or(wanted);
    }
}
