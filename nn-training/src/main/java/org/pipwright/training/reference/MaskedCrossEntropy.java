package org.pipwright.training.reference;

import org.nd4j.common.primitives.Pair;
import org.nd4j.linalg.activations.IActivation;
import org.nd4j.linalg.api.ndarray.INDArray;
import org.nd4j.linalg.factory.Nd4j;
import org.nd4j.linalg.lossfunctions.ILossFunction;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.training.learner.MaskedSoftmax;

/**
 * {@link MaskedSoftmax} as a loss of Deeplearning4j, on scores as they leave the last layer: softmax is part of the loss,
 * so that the mask can differ from sample to sample. A label of {@value #IMPOSSIBLE} marks an impossible outcome.
 */
final class MaskedCrossEntropy implements ILossFunction {
    /** Label of an outcome that cannot happen. */
    static final float IMPOSSIBLE = -1;

    private static final long serialVersionUID = 1;

    /** Fills in the derivatives, one row a sample, and returns the losses. */
    private static double[] evaluate(INDArray labels, INDArray scores, float[] derivatives) {
        float[] targets = labels.dup('c').data().asFloat();
        float[] all = scores.dup('c').data().asFloat();
        float[] row = new float[Outcomes.COUNT];
        float[] delta = new float[Outcomes.COUNT];
        double[] losses = new double[all.length / Outcomes.COUNT];
        for (int i = 0; i < losses.length; i++) {
            int at = i * Outcomes.COUNT;
            int possible = 0;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                row[k] = all[at + k];
                possible |= targets[at + k] == IMPOSSIBLE ? 0 : 1 << k;
            }
            losses[i] = MaskedSoftmax.lossAndDelta(row, possible, targets, at, delta);
            System.arraycopy(delta, 0, derivatives, at, Outcomes.COUNT);
        }
        return losses;
    }

    @Override
    public double computeScore(INDArray labels, INDArray scores, IActivation activation, INDArray mask, boolean mean) {
        double sum = 0;
        double[] losses = evaluate(labels, scores, new float[(int) scores.length()]);
        for (double loss : losses) {
            sum += loss;
        }
        return mean ? sum / losses.length : sum;
    }

    @Override
    public INDArray computeScoreArray(INDArray labels, INDArray scores, IActivation activation, INDArray mask) {
        double[] losses = evaluate(labels, scores, new float[(int) scores.length()]);
        return Nd4j.create(losses, new long[] {losses.length, 1}, 'c').castTo(scores.dataType());
    }

    @Override
    public INDArray computeGradient(INDArray labels, INDArray scores, IActivation activation, INDArray mask) {
        float[] derivatives = new float[(int) scores.length()];
        evaluate(labels, scores, derivatives);
        return Nd4j.create(derivatives, scores.shape(), 'c');
    }

    @Override
    public Pair<Double, INDArray> computeGradientAndScore(
            INDArray labels, INDArray scores, IActivation activation, INDArray mask, boolean mean) {
        float[] derivatives = new float[(int) scores.length()];
        double sum = 0;
        double[] losses = evaluate(labels, scores, derivatives);
        for (double loss : losses) {
            sum += loss;
        }
        return Pair.of(mean ? sum / losses.length : sum, Nd4j.create(derivatives, scores.shape(), 'c'));
    }

    @Override
    public String name() {
        return "MaskedCrossEntropy";
    }
}
