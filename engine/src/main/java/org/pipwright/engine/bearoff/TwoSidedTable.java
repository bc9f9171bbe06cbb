package org.pipwright.engine.bearoff;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Exact win chances and money equities of all pairs of arrangements of few checkers, when both sides have borne off at
 * least one, so that gammons are impossible. Both sides play, double, take and pass to maximise their equity, for each
 * cube state on its own.
 *
 * <p>A read-only view of a buffer, shared by threads. Four ints a pair, in units of 2^-30: cubeless equity, and the
 * equities with the cube in the centre, with the side on roll, and with the opponent. Rounding to a unit at each step of
 * the induction leaves errors below 1e-8.
 */
public final class TwoSidedTable {
    /** The equity 1 in the units of the table. */
    static final int UNIT = 1 << 30;

    /** Ints a pair. */
    static final int LANES = 4;

    private static final int CUBELESS = 0;
    private static final int CENTRED = 1;
    private static final int MINE = 2;
    private static final int THEIRS = 3;

    private static final int THROWS = 36;

    private final SideIndex index;
    private final IntBuffer values;
    private final ByteBuffer content;

    TwoSidedTable(SideIndex index, ByteBuffer content) {
        this.index = index;
        this.content = content.duplicate().order(ByteOrder.LITTLE_ENDIAN);
        this.values = this.content.asIntBuffer();
    }

    /**
     * Computes a table in memory.
     *
     * @param index arrangements of a side; all points in the home board
     * @param threads threads to use, at least 1
     * @param progress told how far it has come
     * @return the table
     */
    public static TwoSidedTable build(SideIndex index, int threads, TableProgress progress) {
        ByteBuffer content = ByteBuffer.allocate(Math.toIntExact(contentSize(index)));
        fill(index, content, threads, progress);
        return new TwoSidedTable(index, content);
    }

    /** Computes the content into a buffer. */
    static void fill(SideIndex index, ByteBuffer content, int threads, TableProgress progress) {
        new TwoSidedBuilder(index, content.order(ByteOrder.LITTLE_ENDIAN)).build(threads, progress);
    }

    /**
     * Size of a table.
     *
     * @param index arrangements of a side
     * @return bytes
     */
    public static long contentSize(SideIndex index) {
        return (long) index.size() * index.size() * LANES * Integer.BYTES;
    }

    /** The content, for writing to a file. */
    ByteBuffer content() {
        return content.duplicate();
    }

    /**
     * Which arrangements of a side the table holds.
     *
     * @return the index
     */
    public SideIndex index() {
        return index;
    }

    /**
     * Whether the table has the exact values of a position.
     *
     * @param planes array that holds the position, unfinished
     * @param at index of its first plane
     * @return true if both sides are covered and have borne off a checker
     */
    public boolean covers(int[] planes, int at) {
        return (Planes.occupied(planes, at) & Planes.occupied(planes, at + Planes.SIDE) & 1) != 0
                && index.covers(planes, at)
                && index.covers(planes, at + Planes.SIDE);
    }

    /**
     * The values of a pair.
     *
     * @param onRoll arrangement of the side on roll, at least 1, as {@link SideIndex#of} gives it
     * @param opponent arrangement of the opponent, at least 1
     * @return the values
     */
    public TwoSidedValue value(int onRoll, int opponent) {
        int at = place(onRoll, opponent);
        return new TwoSidedValue(
                (1 + equity(at + CUBELESS)) / 2, equity(at + CENTRED), equity(at + MINE), equity(at + THEIRS));
    }

    /** Chance of the side on roll to win without a cube. */
    double win(int onRoll, int opponent) {
        return (1 + equity(place(onRoll, opponent) + CUBELESS)) / 2;
    }

    /**
     * The values of doubling or not, by looking one roll ahead.
     *
     * @param onRoll arrangement of the side on roll, at least 1
     * @param opponent arrangement of the opponent, at least 1
     * @return the equities before the roll
     */
    public DoublingValue doubling(int onRoll, int opponent) {
        PlayGenerator generator = new PlayGenerator();
        int[] planes = new int[Planes.STRIDE];
        index.write(onRoll, planes, 0);
        double centred = 0;
        double mine = 0;
        for (Roll roll : Roll.all()) {
            int size = generator.generate(planes, 0, roll.high(), roll.low());
            double bestCentred = -1;
            double bestMine = -1;
            for (int i = 0; i < size; i++) {
                int result = index.of(generator.results(), i * Planes.STRIDE);
                bestCentred = Math.max(bestCentred, -equity(place(opponent, result) + CENTRED));
                bestMine = Math.max(bestMine, -equity(place(opponent, result) + THEIRS));
            }
            centred += roll.probability() * bestCentred;
            mine += roll.probability() * bestMine;
        }
        return new DoublingValue(centred, mine, 2 * equity(place(onRoll, opponent) + THEIRS));
    }

    private int place(int onRoll, int opponent) {
        return LANES * (opponent * index.size() + onRoll);
    }

    private double equity(int at) {
        return values.get(at) / (double) UNIT;
    }

    /**
     * From what the opponent gets after each throw to what the side on roll has before it.
     *
     * <p>After a double that is taken the opponent owns the cube and everything counts twice; a pass costs 1. With the
     * cube in the centre or with the side on roll, it doubles if that is better; the opponent passes if that is better.
     *
     * @param sums the opponent's values summed over the 36 throws
     */
    static void settle(long[] sums, int from, int[] out, int to) {
        long doubled = Math.min(2 * -sums[from + MINE], (long) THROWS * UNIT);
        out[to + CUBELESS] = mean(-sums[from + CUBELESS]);
        out[to + CENTRED] = mean(Math.max(-sums[from + CENTRED], doubled));
        out[to + MINE] = mean(Math.max(-sums[from + THEIRS], doubled));
        out[to + THEIRS] = mean(-sums[from + MINE]);
    }

    /** A thirty-sixth, rounded to the nearest. */
    private static int mean(long sum) {
        return (int) Math.floorDiv(sum + THROWS / 2, THROWS);
    }
}
