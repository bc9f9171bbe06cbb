package org.pipwright.training.cuda;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Planes;

/** Computes a run by all threads of this machine: engine's evaluation, and a learner that skips what is 0. */
final class ThreadAccelerator implements Accelerator {
    private static final int TASK = 64;

    private final Recipe recipe;
    private final List<Supplier<NetworkEvaluator>> answering = new ArrayList<>();

    /** Those that can learn, by their number. */
    private final Map<Integer, ThreadNet> nets = new HashMap<>();

    private final int[] planes;
    private final float[] targets;
    private int next;
    private int size;

    ThreadAccelerator(Recipe recipe) {
        this.recipe = recipe;
        planes = new int[Planes.STRIDE * recipe.memory()];
        targets = new float[6 * recipe.memory()];
    }

    ThreadNet net(int index) {
        return nets.get(index);
    }

    /** Lessons a step. */
    int batch() {
        return recipe.learner().batch();
    }

    @Override
    public String description() {
        return Threads.count() + " threads";
    }

    @Override
    public void use() {
        // Any thread may.
    }

    @Override
    public void add(ResidualShape shape, float[] weights) {
        ThreadNet net = new ThreadNet(shape, weights, recipe.learner());
        nets.put(answering.size(), net);
        answering.add(net::frozen);
    }

    @Override
    public void add(Lanes lanes) {
        ThreadLocal<NetworkEvaluator> evaluators = ThreadLocal.withInitial(() -> new NetworkEvaluator(lanes));
        answering.add(evaluators::get);
    }

    /** What answers on this thread. */
    NetworkEvaluator frozen(int net) {
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
        return nets.get(net).steps();
    }

    @Override
    public double[] losses(int net) {
        return nets.get(net).losses();
    }

    @Override
    public void remember(LessonList lessons) {
        for (int i = 0; i < lessons.size(); i++) {
            System.arraycopy(lessons.planes(), Planes.STRIDE * i, planes, Planes.STRIDE * next, Planes.STRIDE);
            System.arraycopy(lessons.targets(), 6 * i, targets, 6 * next, 6);
            next = (next + 1) % recipe.memory();
            size = Math.min(recipe.memory(), size + 1);
        }
    }

    @Override
    public int remembered() {
        return size;
    }

    @Override
    public void learn(long seed, float rate, List<Integer> learning) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] drawn = new int[batch()];
        Arrays.setAll(drawn, i -> random.nextInt(size));
        learning.forEach(net -> nets.get(net).learn(planes, targets, drawn, rate));
    }

    @Override
    public void ask(int net, int[] positions, int count, float[] chances) {
        Threads.each((count + TASK - 1) / TASK, task -> {
            for (int i = task * TASK; i < Math.min(count, (task + 1) * TASK); i++) {
                if (!FinishedGames.write(positions, Planes.STRIDE * i, chances, 6 * i)) {
                    frozen(net).evaluate(positions, Planes.STRIDE * i, chances, 6 * i);
                }
            }
        });
    }

    @Override
    public LaneJudge lane() {
        return new ThreadLane(this, new PlaysBatch(recipe.games(), ThreadLane::memory), recipe.keepMargin());
    }

    @Override
    public ResultJudge results(int capacity) {
        IntBuffer results = IntBuffer.allocate(Planes.STRIDE * capacity);
        float[] chances = new float[6 * capacity];
        return new ResultJudge() {
            @Override
            public IntBuffer results() {
                return results;
            }

            @Override
            public void judge(int net, int rows) {
                Threads.each((rows + TASK - 1) / TASK, task -> {
                    int from = task * TASK;
                    int count = Math.min(TASK, rows - from);
                    int[] some = new int[Planes.STRIDE * count];
                    float[] answers = new float[6 * count];
                    results.get(Planes.STRIDE * from, some);
                    frozen(net).evaluateResults(some, 0, some, count, answers);
                    System.arraycopy(answers, 0, chances, 6 * from, 6 * count);
                });
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
