package org.pipwright.training.cuda;

import java.util.Arrays;
import org.pipwright.engine.features.PlaceCode;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;

/** The residual network in plain loops of doubles: the slow twin of what the card computes. */
final class PlainNet {
    private static final double[] POINTS = {1, 2, 3, -1, -2, -3};

    final ResidualShape shape;
    final double[] weights;

    PlainNet(ResidualShape shape, float[] weights) {
        this.shape = shape;
        this.weights = new double[weights.length];
        for (int i = 0; i < weights.length; i++) {
            this.weights[i] = weights[i];
        }
    }

    /** The 264 inputs of a position. */
    static double[] inputs(int[] planes, int at) {
        double[] x = new double[ResidualShape.INPUTS];
        int next = 0;
        for (int side = at; side <= at + 4; side += 4) {
            for (int place = 0; place < Planes.PLACES; place++) {
                for (int k = 0; k < PlaceCode.LENGTH; k++) {
                    x[next++] = PlaceCode.value(place, Planes.count(planes, side, place), k);
                }
            }
        }
        for (int side = at; side <= at + 4; side += 4) {
            x[next++] = Planes.pips(planes, side) / 167.0;
            x[next++] = Planes.contact(planes, at) ? 1 : 0;
        }
        return x;
    }

    private double[] affine(double[] x, int matrix, int bias, int out) {
        double[] y = Arrays.copyOfRange(weights, bias, bias + out);
        for (int i = 0; i < x.length; i++) {
            if (x[i] == 0) {
                // Most inputs and half of the hidden units are, and whole runs are learned with these loops.
                continue;
            }
            for (int j = 0; j < out; j++) {
                y[j] += x[i] * weights[matrix + i * out + j];
            }
        }
        return y;
    }

    private static double scale(double[] h) {
        double mean = 0;
        for (double value : h) {
            mean += value / h.length;
        }
        double variance = 0;
        for (double value : h) {
            variance += (value - mean) * (value - mean) / h.length;
        }
        return 1 / Math.sqrt(variance + 1e-5);
    }

    private static double[] norm(double[] h) {
        double mean = 0;
        for (double value : h) {
            mean += value / h.length;
        }
        double scale = scale(h);
        double[] u = new double[h.length];
        for (int i = 0; i < h.length; i++) {
            u[i] = (h[i] - mean) * scale;
        }
        return u;
    }

    private static double[] softmax(double[] scores, int possible) {
        double[] chances = new double[6];
        double sum = 0;
        for (int k = 0; k < 6; k++) {
            chances[k] = (possible >> k & 1) != 0 ? Math.exp(scores[k]) : 0;
            sum += chances[k];
        }
        for (int k = 0; k < 6; k++) {
            chances[k] /= sum;
        }
        return chances;
    }

    static double equity(double[] chances) {
        double equity = 0;
        for (int k = 0; k < 6; k++) {
            equity += POINTS[k] * chances[k];
        }
        return equity;
    }

    static double equity(float[] chances) {
        double equity = 0;
        for (int k = 0; k < 6; k++) {
            equity += POINTS[k] * chances[k];
        }
        return equity;
    }

    /** What a forward pass went through. */
    private final class Pass {
        final double[] x;
        final double[][] hidden = new double[shape.blocks() + 1][];
        final double[][] normed = new double[shape.blocks() + 1][];
        final double[][] inner = new double[shape.blocks()][];
        final double[] chances;

        Pass(int[] planes, int at) {
            int width = shape.width();
            x = inputs(planes, at);
            hidden[0] = affine(x, 0, shape.inputBias(), width);
            for (int k = 0; k < shape.blocks(); k++) {
                normed[k] = norm(hidden[k]);
                inner[k] = affine(normed[k], shape.a(k), shape.aBias(k), width);
                for (int j = 0; j < width; j++) {
                    inner[k][j] = Math.max(0, inner[k][j]);
                }
                hidden[k + 1] = affine(inner[k], shape.b(k), shape.bBias(k), width);
                for (int j = 0; j < width; j++) {
                    hidden[k + 1][j] += hidden[k][j];
                }
            }
            normed[shape.blocks()] = norm(hidden[shape.blocks()]);
            double[] scores = affine(normed[shape.blocks()], shape.output(), shape.outputBias(), ResidualShape.OUTPUTS);
            chances = softmax(scores, PossibleOutcomes.of(planes, at));
        }
    }

    /** The six chances of an unfinished position. */
    double[] chances(int[] planes, int at) {
        return new Pass(planes, at).chances;
    }

    /** Cross-entropy plus half the squared error of equity. */
    double loss(int[] planes, int at, float[] target, int targetAt) {
        double[] chances = chances(planes, at);
        double loss = 0;
        double aim = 0;
        for (int k = 0; k < 6; k++) {
            loss -= chances[k] > 0 ? target[targetAt + k] * Math.log(chances[k]) : 0;
            aim += POINTS[k] * target[targetAt + k];
        }
        double error = equity(chances) - aim;
        return loss + error * error / 2;
    }

    /** Adds the derivative of the loss by every weight; gives the six chances. */
    double[] addGradient(int[] planes, int at, float[] target, int targetAt, double[] gradient) {
        Pass pass = new Pass(planes, at);
        int width = shape.width();
        double mean = equity(pass.chances);
        double aim = 0;
        for (int k = 0; k < 6; k++) {
            aim += POINTS[k] * target[targetAt + k];
        }
        double[] d = new double[ResidualShape.OUTPUTS];
        int possible = PossibleOutcomes.of(planes, at);
        for (int k = 0; k < 6; k++) {
            if ((possible >> k & 1) != 0) {
                d[k] = pass.chances[k] - target[targetAt + k] + (mean - aim) * pass.chances[k] * (POINTS[k] - mean);
            }
        }
        double[] back = backAffine(pass.normed[shape.blocks()], d, shape.output(), shape.outputBias(), gradient);
        double[] dh = backNorm(pass.hidden[shape.blocks()], pass.normed[shape.blocks()], back);
        for (int k = shape.blocks() - 1; k >= 0; k--) {
            double[] dv = backAffine(pass.inner[k], dh, shape.b(k), shape.bBias(k), gradient);
            for (int j = 0; j < width; j++) {
                dv[j] = pass.inner[k][j] > 0 ? dv[j] : 0;
            }
            double[] du = backAffine(pass.normed[k], dv, shape.a(k), shape.aBias(k), gradient);
            double[] through = backNorm(pass.hidden[k], pass.normed[k], du);
            for (int j = 0; j < width; j++) {
                dh[j] += through[j];
            }
        }
        addGradient(pass.x, dh, 0, shape.inputBias(), gradient);
        return pass.chances;
    }

    private double[] backAffine(double[] x, double[] dy, int matrix, int bias, double[] gradient) {
        addGradient(x, dy, matrix, bias, gradient);
        double[] dx = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < dy.length; j++) {
                dx[i] += weights[matrix + i * dy.length + j] * dy[j];
            }
        }
        return dx;
    }

    private static void addGradient(double[] x, double[] dy, int matrix, int bias, double[] gradient) {
        for (int j = 0; j < dy.length; j++) {
            gradient[bias + j] += dy[j];
        }
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; x[i] != 0 && j < dy.length; j++) {
                gradient[matrix + i * dy.length + j] += x[i] * dy[j];
            }
        }
    }

    private static double[] backNorm(double[] h, double[] u, double[] du) {
        double mean = 0;
        double along = 0;
        for (int i = 0; i < u.length; i++) {
            mean += du[i] / u.length;
            along += du[i] * u[i] / u.length;
        }
        double scale = scale(h);
        double[] dh = new double[u.length];
        for (int i = 0; i < u.length; i++) {
            dh[i] = scale * (du[i] - mean - u[i] * along);
        }
        return dh;
    }
}
