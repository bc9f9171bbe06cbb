package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.pipwright.engine.network.Lanes;

/** Computes a run on the first NVIDIA card. All work but the copying of lanes goes through one stream. */
final class CudaAccelerator implements Accelerator {
    private static final int ASKED_AT_ONCE = 1024;

    private final Recipe recipe;
    private final CUstream_st stream = Gpu.stream();
    private final Products products = new Products(stream);
    private final List<CardAnswers> answering = new ArrayList<>();

    /** Those that can learn, by their number. */
    private final Map<Integer, CardNet> nets = new HashMap<>();

    private final Map<Integer, CardLearner> learners = new HashMap<>();
    private final LessonMemory memory;
    private final Asker asker = new Asker(ASKED_AT_ONCE);
    private final int batch;

    /** Which lessons of the memory were drawn; which of the kept results, and their numbers in their lane's plays. */
    private final long index;

    private final long keptPicks;
    private final long keptIndex;
    private Lookahead lookahead;

    CudaAccelerator(Recipe recipe) {
        this.recipe = recipe;
        batch = recipe.learner().batch();
        memory = new LessonMemory(recipe.memory(), 4 * recipe.games(), stream);
        index = Gpu.allocate(4L * batch);
        keptPicks = Gpu.allocate(4L * batch);
        keptIndex = Gpu.allocate(4L * batch);
    }

    @Override
    public String description() {
        return Gpu.description();
    }

    @Override
    public void use() {
        Gpu.use();
    }

    @Override
    public void add(ResidualShape shape, float[] weights) {
        int number = answering.size();
        CardNet net = new CardNet(shape, weights, recipe.rows(number), stream, products);
        nets.put(number, net);
        learners.put(number, new CardLearner(net, recipe.learner()));
        answering.add(net);
    }

    @Override
    public void add(Lanes lanes) {
        answering.add(new CardLayers(lanes, recipe.rows(answering.size()), stream));
    }

    CardAnswers answering(int index) {
        return answering.get(index);
    }

    Lookahead lookahead() {
        return lookahead;
    }

    @Override
    public void freeze(int net) {
        nets.get(net).freeze();
    }

    @Override
    public NetState state(int index) {
        CardNet net = nets.get(index);
        return new NetState(
                net.read(net.weights),
                net.read(net.firstMoments),
                net.read(net.secondMoments),
                net.read(net.average),
                net.steps());
    }

    @Override
    public void restore(int index, NetState state) {
        CardNet net = nets.get(index);
        net.write(net.weights, state.weights());
        net.write(net.firstMoments, state.firstMoments());
        net.write(net.secondMoments, state.secondMoments());
        net.write(net.average, state.average());
        net.steps(state.steps());
        net.refresh();
        net.freeze();
    }

    @Override
    public long steps(int net) {
        return nets.get(net).steps();
    }

    @Override
    public double[] losses(int net) {
        return learners.get(net).losses();
    }

    @Override
    public void remember(LessonList lessons) {
        memory.add(lessons.planes(), lessons.targets(), lessons.size());
    }

    @Override
    public int remembered() {
        return memory.size();
    }

    @Override
    public void learn(long seed, float rate, List<Integer> learning) {
        nets.get(Recipe.DEEP)
                .kernels
                .with(seed)
                .with(batch)
                .with(memory.size())
                .with(0L)
                .with(0L)
                .with(index)
                .each("draw", batch);
        Lessons lessons = new Lessons(memory.planes, index, false, memory.targets, index);
        for (int net : learning) {
            learners.get(net).learn(lessons, rate);
        }
    }

    /** Networks learn the deep one's opinion of results that were kept in the last lookahead. */
    void teach(CardLane lane, long seed, float rate, List<Integer> learning) {
        nets.get(Recipe.DEEP)
                .kernels
                .with(seed)
                .with(batch)
                .with(lookahead.lastKept())
                .with(lookahead.keptOnCard())
                .with(keptPicks)
                .with(keptIndex)
                .each("draw", batch);
        Lessons lessons = new Lessons(lane.results, keptIndex, true, lookahead.chancesOnCard(), keptPicks);
        for (int net : learning) {
            learners.get(net).learn(lessons, rate);
        }
    }

    @Override
    public void ask(int net, int[] positions, int count, float[] chances) {
        asker.ask(answering.get(net), positions, count, chances);
    }

    @Override
    public LaneJudge lane() {
        if (lookahead == null) {
            lookahead = new Lookahead(
                    answering.get(Recipe.DEEP), answering.get(Recipe.QUICK), recipe.keepMargin(), recipe.games());
        }
        return new CardLane(this, recipe.games());
    }

    @Override
    public ResultJudge results(int capacity) {
        return new CardResults(this, capacity);
    }

    @Override
    public void await() {
        Gpu.await(stream);
    }
}
