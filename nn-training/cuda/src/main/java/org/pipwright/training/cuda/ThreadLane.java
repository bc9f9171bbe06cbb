package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Lookahead of a lane by all threads. All results of a position are asked about together, first those of all rolls by the
 * quick network, then those it keeps by the deep one: the more at once, the less each costs. Equal ones are asked about once.
 */
final class ThreadLane implements LaneJudge {
    private static final int TASK = 4;

    private final ThreadAccelerator machine;
    private final PlaysBatch plays;
    private final float margin;
    private final IntBuffer ints;
    private final LessonList[] keptOfTask;
    private final LessonList kept = new LessonList();

    private static final ThreadLocal<Hands> HANDS = ThreadLocal.withInitial(Hands::new);

    /** A thread's buffers. */
    private static final class Hands {
        int[] results = new int[Planes.STRIDE * 1024];
        float[] chances = new float[6 * 1024];
        final int[] keptResults = new int[Planes.STRIDE * PlaysBatch.SLOTS * Roll.COUNT];
        final float[] keptChances = new float[6 * PlaysBatch.SLOTS * Roll.COUNT];
        final EqualResults equal = new EqualResults();
        float[] equalChances = new float[6 * 1024];
        final int[] keptNumbers = new int[PlaysBatch.SLOTS * Roll.COUNT];
        final int[] firstOfRoll = new int[Roll.COUNT + 1];
        final float[] bestEquities = new float[PlaysBatch.SLOTS];
        final int[] turned = new int[Planes.STRIDE];
        final float[] target = new float[6];

        void room(int count) {
            if (Planes.STRIDE * count > results.length) {
                results = new int[Planes.STRIDE * 2 * count];
                chances = new float[6 * 2 * count];
                equalChances = new float[6 * 2 * count];
            }
        }
    }

    ThreadLane(ThreadAccelerator machine, PlaysBatch plays, float margin) {
        this.machine = machine;
        this.plays = plays;
        this.margin = margin;
        ints = plays.results.asIntBuffer();
        keptOfTask = new LessonList[(plays.positions + TASK - 1) / TASK];
        Arrays.setAll(keptOfTask, task -> new LessonList());
    }

    static ByteBuffer memory(long bytes) {
        return ByteBuffer.allocateDirect(Math.toIntExact(bytes)).order(ByteOrder.nativeOrder());
    }

    @Override
    public PlaysBatch plays() {
        return plays;
    }

    @Override
    public void upload() {
        // They are where they are needed.
    }

    @Override
    public int kept() {
        return kept.size();
    }

    @Override
    public void judge() {
        Threads.each(keptOfTask.length, task -> {
            keptOfTask[task].clear();
            Hands hands = HANDS.get();
            for (int position = task * TASK; position < Math.min(plays.positions, (task + 1) * TASK); position++) {
                if (!plays.leftOut(position)) {
                    judge(position, hands, keptOfTask[task]);
                }
            }
        });
        kept.clear();
        for (LessonList list : keptOfTask) {
            kept.addAll(list);
        }
    }

    /** Results of all rolls of a position follow each other. */
    private void judge(int position, Hands hands, LessonList lessons) {
        int start = plays.starts.getInt(4 * position * Roll.COUNT);
        int last = position * Roll.COUNT + Roll.COUNT - 1;
        int count = plays.starts.getInt(4 * last) + plays.counts.getInt(4 * last) - start;
        hands.room(count);
        ints.get(Planes.STRIDE * start, hands.results, 0, Planes.STRIDE * count);
        int at = Planes.STRIDE * position;
        ask(Recipe.QUICK, at, hands.results, count, hands, hands.chances);
        int size = 0;
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            hands.firstOfRoll[roll] = size;
            int group = position * Roll.COUNT + roll;
            size = keep(hands, size, plays.starts.getInt(4 * group) - start, plays.counts.getInt(4 * group));
        }
        hands.firstOfRoll[Roll.COUNT] = size;
        for (int k = 0; k < size; k++) {
            System.arraycopy(
                    hands.results,
                    Planes.STRIDE * hands.keptNumbers[k],
                    hands.keptResults,
                    Planes.STRIDE * k,
                    Planes.STRIDE);
        }
        ask(Recipe.DEEP, at, hands.keptResults, size, hands, hands.keptChances);
        answer(position, start, hands);
        for (int k = 0; k < size; k++) {
            remember(hands, k, lessons);
        }
    }

    private void ask(int net, int at, int[] results, int count, Hands hands, float[] chances) {
        int different = hands.equal.find(results, count);
        machine.frozen(net).evaluateResults(plays.parents(), at, hands.equal.distinct(), different, hands.equalChances);
        for (int i = 0; i < count; i++) {
            System.arraycopy(hands.equalChances, 6 * hands.equal.places()[i], chances, 6 * i, 6);
        }
    }

    /** Puts the numbers of a roll's best results behind those kept before: the best first, of equals the first. */
    private int keep(Hands hands, int from, int first, int count) {
        int size = 0;
        for (int i = first; i < first + count; i++) {
            float equity = Chances.equity(hands.chances, 6 * i);
            int at = size;
            while (at > 0 && hands.bestEquities[at - 1] < equity) {
                at--;
            }
            if (at == PlaysBatch.SLOTS) {
                continue;
            }
            size = Math.min(PlaysBatch.SLOTS, size + 1);
            for (int k = size - 1; k > at; k--) {
                hands.bestEquities[k] = hands.bestEquities[k - 1];
                hands.keptNumbers[from + k] = hands.keptNumbers[from + k - 1];
            }
            hands.bestEquities[at] = equity;
            hands.keptNumbers[from + at] = i;
        }
        while (hands.bestEquities[size - 1] < hands.bestEquities[0] - margin) {
            size--;
        }
        return from + size;
    }

    private void answer(int position, int start, Hands hands) {
        float[] expected = new float[6];
        for (Roll roll : Roll.all()) {
            int from = hands.firstOfRoll[roll.index()];
            int to = hands.firstOfRoll[roll.index() + 1];
            int best = from;
            for (int k = from + 1; k < to; k++) {
                if (Chances.equity(hands.keptChances, 6 * k) > Chances.equity(hands.keptChances, 6 * best)) {
                    best = k;
                }
            }
            for (int k = 0; k < 6; k++) {
                expected[k] += (float) (roll.probability() * hands.keptChances[6 * best + k]);
            }
            if (plays.rolls.getInt(4 * position) == roll.index()) {
                thrown(position, start, hands, from, to);
            }
        }
        for (int k = 0; k < 6; k++) {
            plays.expected.putFloat(4 * (6 * position + k), expected[k]);
        }
    }

    private void thrown(int position, int start, Hands hands, int from, int to) {
        plays.thrownCounts.putInt(4 * position, to - from);
        for (int k = from; k < to; k++) {
            int slot = PlaysBatch.SLOTS * position + k - from;
            plays.thrownResults.putInt(4 * slot, start + hands.keptNumbers[k]);
            for (int c = 0; c < 6; c++) {
                plays.thrownChances.putFloat(4 * (6 * slot + c), hands.keptChances[6 * k + c]);
            }
        }
    }

    /** A result the deep network has judged, as a lesson for the side on roll after it. */
    private static void remember(Hands hands, int k, LessonList lessons) {
        Planes.copySwapped(hands.keptResults, Planes.STRIDE * k, hands.turned, 0);
        System.arraycopy(hands.keptChances, 6 * k, hands.target, 0, 6);
        Chances.swap(hands.target, 0);
        lessons.add(hands.turned, 0, hands.target, 0);
    }

    @Override
    public void teach(long seed, float rate, List<Integer> nets) {
        int[] unfinished = IntStream.range(0, kept.size())
                .filter(i -> onBoard(8 * i) && onBoard(8 * i + Planes.SIDE))
                .toArray();
        SplittableRandom random = new SplittableRandom(seed);
        int[] drawn = new int[machine.batch()];
        Arrays.setAll(drawn, i -> unfinished[random.nextInt(unfinished.length)]);
        nets.forEach(net -> machine.net(net).learn(kept.planes(), kept.targets(), drawn, rate));
    }

    private boolean onBoard(int at) {
        return (Planes.occupied(kept.planes(), at) & Planes.ON_BOARD) != 0;
    }
}
