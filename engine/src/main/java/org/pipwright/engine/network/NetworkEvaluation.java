package org.pipwright.engine.network;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FacingPairs;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;

/**
 * One thread's buffers for evaluating a network: from scratch ({@link #evaluate}), or many siblings that differ little
 * from one position ({@link #begin}, {@link #evaluateSiblings}). Both give the chances of the side on roll.
 */
public final class NetworkEvaluation {
    /** Siblings that go through the later layers together. */
    private static final int GROUP = 4;

    /** Most first-layer rows besides the extras: all 30 checkers leave one place and arrive at another. */
    private static final int MOST_STEPS = 60;

    private final Network network;
    private final Kernel kernel;
    private final FeatureSet features;
    private final float[][] rows;
    private final float[] scales;
    private final int[] base = new int[Planes.STRIDE];
    private final float[] baseExtras;
    private final float[] baseSums;
    private final float[] extras;
    /** Activations: by layer, by member of the group. */
    private final float[][][] activations;

    private final int[] pairs = new int[FacingPairs.MOST];
    private final boolean paired;

    private int rowCount;

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
        this.features = network.features();
        this.paired = features.pairs() > 0;
        // One more than can be used: sumFromBase writes a row before it knows whether it counts.
        int mostPairs = paired ? 2 * FacingPairs.MOST : 0;
        this.rows = new float[MOST_STEPS + features.extras() + mostPairs + 1][];
        this.scales = new float[rows.length];
        this.baseExtras = new float[features.extras()];
        this.extras = new float[features.extras()];
        this.baseSums = new float[network.hidden()];
        PackedLayer[] later = network.later();
        this.activations = new float[later.length + 1][GROUP][];
        for (int s = 0; s < GROUP; s++) {
            activations[0][s] = new float[network.hidden()];
            for (int l = 0; l < later.length; l++) {
                activations[l + 1][s] = new float[later[l].width];
            }
        }
    }

    /**
     * The six chances of a position, computed from scratch.
     *
     * @param planes array that holds the unfinished position
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of six chances of the side on roll
     */
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        sumFromScratch(planes, at, 0, activations[0][0], extras);
        PackedLayer[] later = network.later();
        for (int l = 0; l < later.length; l++) {
            kernel.dense(activations[l][0], later[l], floorAfter(l), activations[l + 1][0]);
        }
        Softmax.apply(activations[later.length][0], PossibleOutcomes.of(planes, at), out, outAt);
    }

    private void sumFromScratch(int[] planes, int at, float floor, float[] sums, float[] extrasOut) {
        rowCount = 0;
        for (int side = 0; side < 2; side++) {
            int sideAt = at + side * Planes.SIDE;
            for (int left = Planes.occupied(planes, sideAt); left != 0; left &= left - 1) {
                int place = Integer.numberOfTrailingZeros(left);
                addSteps(side, place, 0, Planes.count(planes, sideAt, place));
            }
        }
        features.extras(planes, at, extrasOut, 0);
        for (int i = 0; i < extrasOut.length; i++) {
            addRow(network.extraRow(i), extrasOut[i]);
        }
        if (paired) {
            addPairs(FacingPairs.list(planes, at, pairs, 0), 1);
        }
        kernel.accumulate(network.emptyBoard(), rows, scales, rowCount, floor, sums);
    }

    private void addRow(float[] row, float scale) {
        rows[rowCount] = row;
        scales[rowCount++] = scale;
    }

    private void addSteps(int side, int place, int before, int after) {
        for (int count = before; count < after; count++) {
            addRow(network.stepRow(side, place, count), 1);
        }
        for (int count = after; count < before; count++) {
            addRow(network.stepRow(side, place, count), -1);
        }
    }

    /** Every layer but the last clips at zero; softmax takes the last as it is. */
    private float floorAfter(int later) {
        return later == network.later().length - 1 ? Float.NEGATIVE_INFINITY : 0;
    }

    /**
     * Sets the position that siblings are compared with.
     *
     * @param planes array that holds a position; it need not be one that could come up
     * @param at index of its first plane
     */
    public void begin(int[] planes, int at) {
        System.arraycopy(planes, at, base, 0, Planes.STRIDE);
        sumFromScratch(planes, at, Float.NEGATIVE_INFINITY, baseSums, baseExtras);
    }

    /**
     * The six chances of positions that differ little from the one given to {@link #begin}.
     *
     * @param planes array that holds the unfinished positions one after another
     * @param count number of positions
     * @param out where to write six chances a position, for the side on roll
     */
    public void evaluateSiblings(int[] planes, int count, float[] out) {
        PackedLayer[] later = network.later();
        for (int first = 0; first < count; first += GROUP) {
            int members = Math.min(GROUP, count - first);
            for (int s = 0; s < members; s++) {
                sumFromBase(planes, (first + s) * Planes.STRIDE, activations[0][s]);
            }
            for (int l = 0; l < later.length; l++) {
                kernel.dense4(activations[l], later[l], floorAfter(l), activations[l + 1]);
            }
            for (int s = 0; s < members; s++) {
                int possible = PossibleOutcomes.of(planes, (first + s) * Planes.STRIDE);
                Softmax.apply(activations[later.length][s], possible, out, (first + s) * Outcomes.COUNT);
            }
        }
    }

    private void sumFromBase(int[] planes, int at, float[] sums) {
        rowCount = 0;
        for (int side = 0; side < 2; side++) {
            addChanges(side, planes, at + side * Planes.SIDE, side * Planes.SIDE);
        }
        features.extras(planes, at, extras, 0);
        for (int i = 0; i < extras.length; i++) {
            float change = extras[i] - baseExtras[i];
            rows[rowCount] = network.extraRow(i);
            scales[rowCount] = change;
            rowCount += change != 0 ? 1 : 0;
        }
        if (paired) {
            addPairChanges(planes, at);
        }
        kernel.accumulate(baseSums, rows, scales, rowCount, 0, sums);
    }

    private void addPairs(int count, float scale) {
        for (int i = 0; i < count; i++) {
            addRow(network.pairRow(pairs[i]), scale);
        }
    }

    /** Takes the pairs that changed places had a part in and adds those they have a part in now. */
    private void addPairChanges(int[] planes, int at) {
        int mine = FacingPairs.changed(planes, at, base, 0);
        int theirs = FacingPairs.changed(planes, at + Planes.SIDE, base, Planes.SIDE);
        addPairs(FacingPairs.list(base, 0, mine, theirs, pairs, 0), -1);
        addPairs(FacingPairs.list(planes, at, mine, theirs, pairs, 0), 1);
    }

    private void addChanges(int side, int[] planes, int at, int baseAt) {
        int changed = 0;
        for (int k = 0; k < Planes.SIDE; k++) {
            changed |= planes[at + k] ^ base[baseAt + k];
        }
        for (; changed != 0; changed &= changed - 1) {
            int place = Integer.numberOfTrailingZeros(changed);
            addSteps(side, place, Planes.count(base, baseAt, place), Planes.count(planes, at, place));
        }
    }
}
