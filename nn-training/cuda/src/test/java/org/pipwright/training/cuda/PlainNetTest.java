package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;

/** The plain network that the card is held against. */
class PlainNetTest {
    private static final double STEP = 1e-4;

    /** The derivative by weights of every tensor is what a small change of them makes of the loss. */
    @Test
    void gradientIsThatOfFiniteDifferences() {
        ResidualShape shape = new ResidualShape(128, 2);
        int[] planes = RandomPositions.of(6, 11);
        float[] targets = Weights.targets(planes, 6);
        PlainNet net = new PlainNet(shape, Weights.of(shape));
        int[] tensors = {
            0,
            shape.inputBias(),
            shape.a(0),
            shape.aBias(0),
            shape.b(0),
            shape.bBias(0),
            shape.a(1),
            shape.aBias(1),
            shape.b(1),
            shape.bBias(1),
            shape.output(),
            shape.outputBias()
        };
        int[] sizes = {264 * 128, 128, 128 * 128, 128, 128 * 128, 128, 128 * 128, 128, 128 * 128, 128, 128 * 8, 6};
        SplittableRandom random = new SplittableRandom(5);
        for (int p = 0; p < 6; p++) {
            double[] gradient = new double[shape.size()];
            net.addGradient(planes, 8 * p, targets, 6 * p, gradient);
            for (int t = 0; t < tensors.length; t++) {
                for (int k = 0; k < 5; k++) {
                    int i = tensors[t] + random.nextInt(sizes[t]);
                    double before = net.weights[i];
                    net.weights[i] = before + STEP;
                    double above = net.loss(planes, 8 * p, targets, 6 * p);
                    net.weights[i] = before - STEP;
                    double below = net.loss(planes, 8 * p, targets, 6 * p);
                    net.weights[i] = before;
                    double expected = (above - below) / (2 * STEP);
                    assertEquals(
                            expected, gradient[i], 1e-4 + 0.01 * Math.abs(expected), "tensor " + t + ", weight " + i);
                }
            }
        }
    }

    /** Engine's network of the same weights, in half precision, gives the same chances. */
    @ParameterizedTest
    @ValueSource(strings = {"128x1", "256x2", "384x3"})
    void agreesWithEngine(String text) {
        ResidualShape shape = ResidualShape.parse(text);
        Model model = new Model(ResidualNets.network(shape, Weights.of(shape)), Map.of());
        // The numbers as the model file has them.
        PlainNet net = new PlainNet(shape, ResidualNets.weights(shape, model));
        NetworkEvaluator evaluator = new NetworkEvaluator(model);
        int count = 200;
        int[] planes = RandomPositions.of(count, 7);
        float[] chances = new float[6];
        for (int i = 0; i < count; i++) {
            evaluator.evaluate(planes, 8 * i, chances, 0);
            double[] expected = net.chances(planes, 8 * i);
            for (int k = 0; k < 6; k++) {
                assertEquals(expected[k], chances[k], 1e-4);
            }
        }
    }

    @Test
    void weightsGoToAModelAndBack() {
        ResidualShape shape = new ResidualShape(128, 2);
        float[] weights = Weights.of(shape);
        float[] back = ResidualNets.weights(shape, new Model(ResidualNets.network(shape, weights), Map.of()));
        // Half precision has eleven bits; alignment leaves gaps that no tensor owns.
        for (int[] part :
                new int[][] {{0, 264 * 128}, {shape.a(1), 128 * 128}, {shape.bBias(1), 128}, {shape.output(), 1024}}) {
            for (int i = part[0]; i < part[0] + part[1]; i++) {
                assertEquals(weights[i], back[i], 1e-7 + Math.abs(weights[i]) / 2048);
            }
        }
        float[] again = ResidualNets.weights(shape, new Model(ResidualNets.network(shape, back), Map.of()));
        assertArrayEquals(back, again);
    }
}
