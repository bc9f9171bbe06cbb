package org.pipwright.training.reference;

import java.util.List;
import org.deeplearning4j.nn.multilayer.MultiLayerNetwork;
import org.nd4j.linalg.api.ndarray.INDArray;
import org.nd4j.linalg.factory.Nd4j;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.learner.Learner;
import org.pipwright.training.learner.LearnerState;
import org.pipwright.training.selfplay.Samples;

/**
 * Deeplearning4j as the learner: slower than our own, which has to compute the same, except that here the weights of
 * pairs move in every step.
 */
public final class ReferenceLearner implements Learner {
    private final FeatureSet features;
    private final SettableRate rate = new SettableRate();
    private final MultiLayerNetwork network;

    /**
     * A learner.
     *
     * @param start the network to begin with
     * @throws LinkageError if ND4J has no native library for this machine
     */
    public ReferenceLearner(Network start) {
        features = start.features();
        network = ReferenceNetwork.of(start, rate);
    }

    @Override
    public double fit(Samples samples, int[] order, int from, int to, double stepRate) {
        rate.rate = stepRate;
        network.fit(inputs(features, samples, order, from, to), labels(samples, order, from, to));
        return network.score();
    }

    /**
     * Inputs of samples as Deeplearning4j takes them.
     *
     * @param features how positions are encoded
     * @param samples where they are
     * @param order indices of samples
     * @param from first index into the order
     * @param to after the last
     * @return one row a sample
     */
    public static INDArray inputs(FeatureSet features, Samples samples, int[] order, int from, int to) {
        int width = features.inputs();
        float[] inputs = new float[(to - from) * width];
        for (int i = from; i < to; i++) {
            features.encode(samples.planes(), order[i] * Planes.STRIDE, inputs, (i - from) * width);
        }
        return Nd4j.create(inputs, new long[] {to - from, width}, 'c');
    }

    /**
     * Targets of samples as {@link ReferenceNetwork} takes them.
     *
     * @param samples where they are
     * @param order indices of samples
     * @param from first index into the order
     * @param to after the last
     * @return one row of six target chances a sample, impossible outcomes marked
     */
    public static INDArray labels(Samples samples, int[] order, int from, int to) {
        float[] labels = new float[(to - from) * Outcomes.COUNT];
        for (int i = from; i < to; i++) {
            int possible = PossibleOutcomes.of(samples.planes(), order[i] * Planes.STRIDE);
            for (int k = 0; k < Outcomes.COUNT; k++) {
                boolean counts = (possible >> k & 1) != 0;
                labels[(i - from) * Outcomes.COUNT + k] =
                        counts ? samples.targets()[order[i] * Outcomes.COUNT + k] : MaskedCrossEntropy.IMPOSSIBLE;
            }
        }
        return Nd4j.create(labels, new long[] {to - from, Outcomes.COUNT}, 'c');
    }

    /**
     * The network as Deeplearning4j holds it; it goes on learning with this learner.
     *
     * @return the network itself, whose output is the six scores
     */
    public MultiLayerNetwork theirs() {
        return network;
    }

    @Override
    public Network network() {
        return ReferenceNetwork.back(network, features);
    }

    @Override
    public LearnerState state() {
        INDArray updater = network.getUpdater(true).getStateViewArray();
        return new LearnerState(
                network.getIterationCount(),
                List.of(
                        network.params().dup('c').data().asFloat(),
                        updater.dup('c').data().asFloat()));
    }

    @Override
    public void restore(LearnerState state) {
        float[] params = state.arrays().get(0);
        INDArray updater = network.getUpdater(true).getStateViewArray();
        if (state.arrays().size() != 2
                || params.length != network.numParams()
                || state.arrays().get(1).length != updater.length()) {
            throw new IllegalArgumentException("the state is not one of this learner and shape");
        }
        network.setParams(Nd4j.create(params, new long[] {1, params.length}, 'c'));
        updater.assign(Nd4j.create(state.arrays().get(1), updater.shape(), 'c'));
        network.getLayerWiseConfigurations().setIterationCount((int) state.steps());
    }

    @Override
    public void close() {
        network.close();
    }
}
