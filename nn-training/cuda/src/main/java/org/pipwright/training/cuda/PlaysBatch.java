package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import java.nio.IntBuffer;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.LongFunction;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Roll;

/**
 * All results of all 21 rolls for many positions, made by all threads of this machine; then what lookahead found out about
 * them. Serves one lane of games.
 */
final class PlaysBatch {
    /** Results kept a roll at most; as in the kernels. */
    static final int SLOTS = 6;

    private static final int TASK = 16;

    /** Results a position, twice the usual mean of about 390. */
    private static final int ROOM = 800;

    /** Room besides: the mean of few positions may be far from the usual. More than any six positions have. */
    private static final int SPARE = 1 << 17;

    final int positions;
    final int capacity;

    /** Results one after another, eight ints each; where each roll's begin and how many it has. */
    final ByteBuffer results;

    final ByteBuffer starts;
    final ByteBuffer counts;

    /** The roll that was thrown in each position. */
    final ByteBuffer rolls;

    /** Answers: chances by lookahead; of the thrown roll how many results were kept, which, and their chances. */
    final ByteBuffer expected;

    final ByteBuffer thrownCounts;
    final ByteBuffer thrownResults;
    final ByteBuffer thrownChances;

    private final IntBuffer resultInts;
    private final AtomicInteger used = new AtomicInteger();
    private final boolean[] leftOut;
    private final int[] parents;

    /**
     * Room for a lane's positions.
     *
     * @param memory gives direct memory of so many bytes in native order
     */
    PlaysBatch(int positions, LongFunction<ByteBuffer> memory) {
        this(positions, positions * ROOM + SPARE, memory);
    }

    /** The same with room for so many results, at least those of any one position. */
    PlaysBatch(int positions, int capacity, LongFunction<ByteBuffer> memory) {
        this.positions = positions;
        this.capacity = capacity;
        leftOut = new boolean[positions];
        parents = new int[8 * positions];
        results = memory.apply(32L * capacity);
        resultInts = results.asIntBuffer();
        starts = memory.apply(4L * Roll.COUNT * positions);
        counts = memory.apply(4L * Roll.COUNT * positions);
        rolls = memory.apply(4L * positions);
        expected = memory.apply(24L * positions);
        thrownCounts = memory.apply(4L * positions);
        thrownResults = memory.apply(4L * SLOTS * positions);
        thrownChances = memory.apply(24L * SLOTS * positions);
    }

    /** One thread's generator and buffer. */
    private static final class Hands {
        final PlayGenerator generator = new PlayGenerator();
        int[] results = new int[8 * 4096];
        final int[] starts = new int[Roll.COUNT];
        final int[] counts = new int[Roll.COUNT];
    }

    private static final ThreadLocal<Hands> HANDS = ThreadLocal.withInitial(Hands::new);

    /**
     * Generates all results for the given positions, eight ints each. Positions whose results find no room are left out:
     * they have to wait for another batch.
     */
    void generate(int[] planes) {
        used.set(0);
        System.arraycopy(planes, 0, parents, 0, 8 * positions);
        Threads.each((positions + TASK - 1) / TASK, task -> {
            Hands hands = HANDS.get();
            for (int i = task * TASK; i < Math.min(positions, (task + 1) * TASK); i++) {
                generate(planes, i, hands);
            }
        });
    }

    private void generate(int[] planes, int position, Hands hands) {
        int size = 0;
        for (Roll roll : Roll.all()) {
            int count = hands.generator.generate(planes, 8 * position, roll.high(), roll.low());
            while (8 * (size + count) > hands.results.length) {
                hands.results = java.util.Arrays.copyOf(hands.results, 2 * hands.results.length);
            }
            System.arraycopy(hands.generator.results(), 0, hands.results, 8 * size, 8 * count);
            hands.starts[roll.index()] = size;
            hands.counts[roll.index()] = count;
            size += count;
        }
        if (size > capacity) {
            throw new IllegalStateException("one position has " + size + " plays, and there is room for " + capacity);
        }
        int needed = size;
        int at = used.getAndUpdate(taken -> taken + needed <= capacity ? taken + needed : taken);
        leftOut[position] = at + size > capacity;
        if (!leftOut[position]) {
            resultInts.put(8 * at, hands.results, 0, 8 * size);
        }
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            // What is left out shares the first result of all, so that lookahead has something to look at.
            starts.putInt(4 * (position * Roll.COUNT + roll), leftOut[position] ? 0 : at + hands.starts[roll]);
            counts.putInt(4 * (position * Roll.COUNT + roll), leftOut[position] ? 1 : hands.counts[roll]);
        }
    }

    /** Whether a position found no room; what is answered for it means nothing. */
    boolean leftOut(int position) {
        return leftOut[position];
    }

    /** The roll thrown in a position. */
    Roll roll(int position) {
        return Roll.all().get(rolls.getInt(4 * position));
    }

    /** The positions that all results come from, eight ints each. */
    int[] parents() {
        return parents;
    }

    /** Results in all. */
    int size() {
        return used.get();
    }

    /** The mean over all rolls of the best reply's chances for the side on roll. */
    void expected(int position, float[] out, int at) {
        for (int k = 0; k < 6; k++) {
            out[at + k] = expected.getFloat(4 * (6 * position + k));
        }
    }

    /** How many results of the thrown roll were kept. */
    int kept(int position) {
        return thrownCounts.getInt(4 * position);
    }

    /** Chances after a kept result, for the side that played. */
    void chances(int position, int slot, float[] out, int at) {
        for (int k = 0; k < 6; k++) {
            out[at + k] = thrownChances.getFloat(4 * (6 * (SLOTS * position + slot) + k));
        }
    }

    /** A kept result, the side that played first. */
    void result(int position, int slot, int[] planes, int at) {
        resultInts.get(8 * thrownResults.getInt(4 * (SLOTS * position + slot)), planes, at, 8);
    }
}
