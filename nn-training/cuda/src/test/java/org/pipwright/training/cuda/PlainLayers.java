package org.pipwright.training.cuda;

import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;

/** Layered networks in plain loops of doubles, over the arrays that a card is given: the slow twin of its kernel. */
final class PlainLayers implements PositionEvaluator {
    private static final int SHAPE = 8;

    private final Lanes lanes;
    private final int[] shapes;
    private final float[] weights;

    PlainLayers(Lanes lanes) {
        this.lanes = lanes;
        shapes = LayeredNets.shapes(lanes);
        weights = LayeredNets.weights(lanes);
    }

    /** Scores of the six outcomes. */
    double[] scores(int[] planes, int at) {
        boolean contact = Planes.contact(planes, at);
        int shape = contact ? 0 : SHAPE;
        FeatureSet features = (contact ? lanes.contact() : lanes.race()).features();
        float[] inputs = new float[FeatureSet.PLACE_INPUTS + 2 * shapes[shape] + shapes[shape + 1]];
        features.encode(planes, at, inputs, 0);
        double[] x = new double[inputs.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = inputs[i];
        }
        int next = shapes[shape + 2];
        for (int layer = 0; layer < shapes[shape + 3]; layer++) {
            double[] y = new double[shapes[shape + 4 + layer]];
            for (int o = 0; o < y.length; o++) {
                y[o] = weights[next + x.length * y.length + o];
            }
            for (int i = 0; i < x.length; i++) {
                for (int o = 0; x[i] != 0 && o < y.length; o++) {
                    y[o] += x[i] * weights[next + (layer == 0 ? i * y.length + o : o * x.length + i)];
                }
            }
            next += (x.length + 1) * y.length;
            for (int o = 0; layer < shapes[shape + 3] - 1 && o < y.length; o++) {
                y[o] = Math.max(0, y[o]);
            }
            x = y;
        }
        return x;
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        double[] scores = scores(planes, at);
        int possible = PossibleOutcomes.of(planes, at);
        double sum = 0;
        for (int k = 0; k < scores.length; k++) {
            scores[k] = (possible >> k & 1) == 0 ? 0 : Math.exp(scores[k]);
            sum += scores[k];
        }
        for (int k = 0; k < scores.length; k++) {
            out[outAt + k] = (float) (scores[k] / sum);
        }
    }
}
