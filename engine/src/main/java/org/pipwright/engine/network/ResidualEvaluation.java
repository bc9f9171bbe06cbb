package org.pipwright.engine.network;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;

/**
 * One thread's buffers for evaluating a {@link ResidualNetwork}. Siblings share the sums of the first layer but for what
 * they differ in; the other layers take many of them at once, so the more come in one call, the better.
 */
public final class ResidualEvaluation implements SiblingEvaluation {
    /** Positions that go through the layers together, even: their numbers should stay in a core's own cache. */
    private static final int GROUP = 96;

    private static final float NO_FLOOR = Float.NEGATIVE_INFINITY;

    private final Kernel kernel;
    private final FirstSums first;
    private final ResidualProducts products;
    private final int width;
    private final float[] sums;
    /** What the blocks change; row by row. */
    private final float[] state;

    private final float[] normed;
    private final float[] hidden;
    private final ActiveInputs active;
    private final float[] scores;
    private final ProductRoom roomOfBlocks = new ProductRoom();
    private final ProductRoom roomOfOutput = new ProductRoom();
    private final float[] six = new float[Outcomes.COUNT];

    /**
     * Buffers for a network, with the fastest kernel this JVM offers.
     *
     * @param network the network to evaluate
     */
    public ResidualEvaluation(ResidualNetwork network) {
        this(network, Kernel.chosen());
    }

    ResidualEvaluation(ResidualNetwork network, Kernel kernel) {
        this.kernel = kernel;
        this.first = new FirstSums(network.first(), kernel);
        this.products = network.products(kernel);
        this.width = network.width();
        this.sums = new float[width];
        this.state = new float[GROUP * width];
        this.normed = new float[GROUP * width];
        this.hidden = new float[GROUP * width];
        this.active = new ActiveInputs(GROUP, width);
        this.scores = new float[GROUP * products.output().stride];
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        first.fromScratch(planes, at, NO_FLOOR, sums);
        System.arraycopy(sums, 0, state, 0, width);
        throughBlocks(1);
        write(0, planes, at, out, outAt);
    }

    @Override
    public void begin(int[] planes, int at) {
        first.begin(planes, at);
    }

    @Override
    public void evaluateSiblings(int[] planes, int count, float[] out) {
        for (int from = 0; from < count; from += GROUP) {
            int members = Math.min(GROUP, count - from);
            for (int s = 0; s < members; s++) {
                first.fromBase(planes, (from + s) * Planes.STRIDE, NO_FLOOR, sums);
                System.arraycopy(sums, 0, state, s * width, width);
            }
            throughBlocks(members);
            for (int s = 0; s < members; s++) {
                write(s, planes, (from + s) * Planes.STRIDE, out, (from + s) * Outcomes.COUNT);
            }
        }
    }

    private void throughBlocks(int rows) {
        for (int block = 0; block < products.first().size(); block++) {
            kernel.normalize(state, rows, width, normed);
            products.first().get(block).set(normed, rows, 0, roomOfBlocks, hidden);
            products.second().get(block).add(hidden, rows, active, state);
        }
        kernel.normalize(state, rows, width, normed);
        products.output().set(normed, rows, NO_FLOOR, roomOfOutput, scores);
    }

    private void write(int row, int[] planes, int at, float[] out, int outAt) {
        System.arraycopy(scores, row * products.output().stride, six, 0, Outcomes.COUNT);
        Softmax.apply(six, PossibleOutcomes.of(planes, at), out, outAt);
    }
}
