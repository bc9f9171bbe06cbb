package org.pipwright.engine.network;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;

/** One thread's buffers for evaluating a {@link Network}. */
public final class NetworkEvaluation implements SiblingEvaluation {
    /** Siblings that go through the later layers together, four at a time. */
    private static final int GROUP = 16;

    private final Network network;
    private final Kernel kernel;
    private final FirstSums first;
    /** Activations: by layer, by member of the group. */
    private final float[][][] activations;

    private final ActiveOfGroup active;

    /**
     * Buffers for a network, with the fastest kernel this JVM offers.
     *
     * @param network the network to evaluate
     */
    public NetworkEvaluation(Network network) {
        this(network, Kernel.chosen());
    }

    NetworkEvaluation(Network network, Kernel kernel) {
        this.network = network;
        this.kernel = kernel;
        this.first = new FirstSums(network.first(), kernel);
        PackedLayer[] later = network.later();
        this.activations = new float[later.length + 1][GROUP][];
        int widest = network.first().width();
        for (PackedLayer layer : later) {
            widest = Math.max(widest, layer.width);
        }
        this.active = new ActiveOfGroup(widest);
        for (int s = 0; s < GROUP; s++) {
            activations[0][s] = new float[network.first().width()];
            for (int l = 0; l < later.length; l++) {
                activations[l + 1][s] = new float[later[l].width];
            }
        }
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        first.fromScratch(planes, at, 0, activations[0][0]);
        PackedLayer[] later = network.later();
        for (int l = 0; l < later.length; l++) {
            kernel.dense(activations[l][0], later[l], floorAfter(l), activations[l + 1][0]);
        }
        Softmax.apply(activations[later.length][0], PossibleOutcomes.of(planes, at), out, outAt);
    }

    /** Every layer but the last clips at zero; softmax takes the last as it is. */
    private float floorAfter(int later) {
        return later == network.later().length - 1 ? Float.NEGATIVE_INFINITY : 0;
    }

    @Override
    public void begin(int[] planes, int at) {
        first.begin(planes, at);
    }

    @Override
    public void evaluateSiblings(int[] planes, int count, float[] out) {
        PackedLayer[] later = network.later();
        for (int from = 0; from < count; from += GROUP) {
            int members = Math.min(GROUP, count - from);
            for (int s = 0; s < members; s++) {
                first.fromBase(planes, (from + s) * Planes.STRIDE, 0, activations[0][s]);
            }
            for (int l = 0; l < later.length; l++) {
                active.find(activations[l], members, Network.padded(later[l].inputs), kernel);
                for (int s = 0; s < members; s += 4) {
                    kernel.dense4(activations[l], s, active, later[l], floorAfter(l), activations[l + 1]);
                }
            }
            for (int s = 0; s < members; s++) {
                int possible = PossibleOutcomes.of(planes, (from + s) * Planes.STRIDE);
                Softmax.apply(activations[later.length][s], possible, out, (from + s) * Outcomes.COUNT);
            }
        }
    }
}
