package org.pipwright.training.cuda;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.Lanes;

/** Computes a run on this machine by plain loops: the slow twin of the card. */
final class PlainAccelerator implements Accelerator {
    private final Recipe recipe;
    private final int room;
    private final List<Supplier<PositionEvaluator>> answering = new ArrayList<>();
    private final Map<Integer, PlainTrainee> nets = new HashMap<>();
    private final PlainMemory memory;

    PlainAccelerator(Recipe recipe) {
        this(recipe, 0);
    }

    /** Lanes have room for so many results, or for the usual number if that is 0. */
    PlainAccelerator(Recipe recipe, int room) {
        this.recipe = recipe;
        this.room = room;
        memory = new PlainMemory(recipe.memory());
    }

    PlainTrainee net(int index) {
        return nets.get(index);
    }

    @Override
    public String description() {
        return "plain loops";
    }

    @Override
    public void use() {
        // Any thread may.
    }

    @Override
    public void add(ResidualShape shape, float[] weights) {
        PlainTrainee net = new PlainTrainee(shape, weights, recipe.learner());
        nets.put(answering.size(), net);
        answering.add(net::frozen);
    }

    @Override
    public void add(Lanes lanes) {
        PlainLayers plain = new PlainLayers(lanes);
        answering.add(() -> plain);
    }

    PositionEvaluator frozen(int net) {
        return answering.get(net).get();
    }

    @Override
    public void freeze(int net) {
        nets.get(net).freeze();
    }

    @Override
    public NetState state(int net) {
        return nets.get(net).state();
    }

    @Override
    public void restore(int net, NetState state) {
        nets.get(net).restore(state);
    }

    @Override
    public long steps(int net) {
        return nets.get(net).state().steps();
    }

    @Override
    public double[] losses(int net) {
        return nets.get(net).losses();
    }

    @Override
    public void remember(LessonList lessons) {
        memory.add(lessons);
    }

    @Override
    public int remembered() {
        return memory.lessons().size();
    }

    @Override
    public void learn(long seed, float rate, List<Integer> learning) {
        learn(memory.lessons(), new SplittableRandom(seed), rate, learning);
    }

    void learn(List<PlainMemory.Lesson> from, SplittableRandom random, float rate, List<Integer> learning) {
        List<PlainMemory.Lesson> batch = new ArrayList<>();
        while (batch.size() < recipe.learner().batch()) {
            batch.add(from.get(random.nextInt(from.size())));
        }
        learning.forEach(net -> nets.get(net).learn(batch, rate));
    }

    @Override
    public void ask(int net, int[] positions, int count, float[] chances) {
        for (int i = 0; i < count; i++) {
            if (!FinishedGames.write(positions, 8 * i, chances, 6 * i)) {
                frozen(net).evaluate(positions, 8 * i, chances, 6 * i);
            }
        }
    }

    @Override
    public LaneJudge lane() {
        PlaysBatch plays = room == 0
                ? new PlaysBatch(recipe.games(), PlainLane::memory)
                : new PlaysBatch(recipe.games(), room, PlainLane::memory);
        return new PlainLane(this, plays, recipe.keepMargin());
    }

    @Override
    public ResultJudge results(int capacity) {
        IntBuffer results = IntBuffer.allocate(8 * capacity);
        float[] chances = new float[6 * capacity];
        return new ResultJudge() {
            @Override
            public IntBuffer results() {
                return results;
            }

            @Override
            public void judge(int net, int rows) {
                int[] ints = new int[8 * rows];
                results.get(0, ints);
                frozen(net).evaluateResults(ints, 0, ints, rows, chances);
            }

            @Override
            public float equity(int row) {
                return Chances.equity(chances, 6 * row);
            }
        };
    }

    @Override
    public void await() {
        // Nothing goes on meanwhile.
    }
}
