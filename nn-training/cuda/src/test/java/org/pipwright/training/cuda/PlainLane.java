package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/** Lookahead of a lane in plain loops: the twin of the card's. */
final class PlainLane implements LaneJudge {
    private final PlainAccelerator machine;
    private final PlaysBatch plays;
    private final double margin;
    private final List<PlainMemory.Lesson> kept = new ArrayList<>();

    PlainLane(PlainAccelerator machine, PlaysBatch plays, double margin) {
        this.machine = machine;
        this.margin = margin;
        this.plays = plays;
    }

    static ByteBuffer memory(long bytes) {
        return ByteBuffer.allocateDirect((int) bytes).order(ByteOrder.nativeOrder());
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
        kept.clear();
        for (int position = 0; position < plays.positions; position++) {
            float[] expected = new float[6];
            for (Roll roll : Roll.all()) {
                add(position, roll, expected);
            }
            put(plays.expected, 6 * position, expected);
        }
    }

    private static void put(ByteBuffer to, int at, float[] chances) {
        for (int k = 0; k < 6; k++) {
            to.putFloat(4 * (at + k), chances[k]);
        }
    }

    private void add(int position, Roll roll, float[] expected) {
        int group = position * Roll.COUNT + roll.index();
        int start = plays.starts.getInt(4 * group);
        List<Integer> pruned = pruned(start, plays.counts.getInt(4 * group));
        float[] chances = after(Recipe.DEEP, results(start, pruned));
        int best = 0;
        for (int k = 0; k < pruned.size(); k++) {
            remember(start + pruned.get(k), chances, 6 * k);
            if (Chances.equity(chances, 6 * k) > Chances.equity(chances, 6 * best)) {
                best = k;
            }
        }
        for (int k = 0; k < 6; k++) {
            expected[k] += (float) (roll.probability() * chances[6 * best + k]);
        }
        if (plays.rolls.getInt(4 * position) == roll.index()) {
            thrown(position, start, pruned, chances);
        }
    }

    private void thrown(int position, int start, List<Integer> pruned, float[] chances) {
        plays.thrownCounts.putInt(4 * position, pruned.size());
        for (int k = 0; k < pruned.size(); k++) {
            int slot = PlaysBatch.SLOTS * position + k;
            plays.thrownResults.putInt(4 * slot, start + pruned.get(k));
            put(plays.thrownChances, 6 * slot, java.util.Arrays.copyOfRange(chances, 6 * k, 6 * k + 6));
        }
    }

    private List<Integer> pruned(int start, int count) {
        List<Integer> all = java.util.stream.IntStream.range(0, count).boxed().toList();
        float[] chances = after(Recipe.QUICK, results(start, all));
        double[] equity = new double[count];
        for (int i = 0; i < count; i++) {
            equity[i] = Chances.equity(chances, 6 * i);
        }
        return PlainLookahead.pruned(equity, margin, PlaysBatch.SLOTS);
    }

    private int[] results(int start, List<Integer> which) {
        IntBuffer ints = plays.results.asIntBuffer();
        int[] results = new int[8 * which.size()];
        for (int i = 0; i < which.size(); i++) {
            ints.get(8 * (start + which.get(i)), results, 8 * i, 8);
        }
        return results;
    }

    private float[] after(int net, int[] results) {
        float[] chances = new float[results.length / 8 * 6];
        machine.frozen(net).evaluateResults(results, 0, results, results.length / 8, chances);
        return chances;
    }

    /** A result the deep network has judged, as a lesson for the side on roll after it. */
    private void remember(int result, float[] chances, int at) {
        int[] planes = new int[8];
        int[] swapped = new int[8];
        plays.results.asIntBuffer().get(8 * result, planes, 0, 8);
        Planes.copySwapped(planes, 0, swapped, 0);
        float[] target = java.util.Arrays.copyOfRange(chances, at, at + 6);
        Chances.swap(target, 0);
        kept.add(new PlainMemory.Lesson(swapped, target));
    }

    @Override
    public void teach(long seed, float rate, List<Integer> nets) {
        List<PlainMemory.Lesson> unfinished = kept.stream()
                .filter(lesson -> (Planes.occupied(lesson.planes(), 0) & Planes.ON_BOARD) != 0
                        && (Planes.occupied(lesson.planes(), Planes.SIDE) & Planes.ON_BOARD) != 0)
                .toList();
        machine.learn(unfinished, new SplittableRandom(seed), rate, nets);
    }
}
