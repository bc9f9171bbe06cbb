package org.pipwright.training.cuda;

import java.util.Arrays;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.ResidualNetwork;
import org.pipwright.training.learner.LayerKernel;

/**
 * A network that learns by all threads, and answers, frozen, as engine evaluates it. A batch is cut into
 * parts, each with a gradient of its own; these are added in their order, so that the number of threads changes nothing.
 */
final class ThreadNet {
    /** Most parts of a batch, and the fewest lessons of one: each more is a gradient to clear and to add. */
    private static final int MAX_PARTS = 16;

    private static final int LESSONS_A_PART = 64;

    /** Slices of the weights that threads share among themselves. */
    private static final int SLICES = 16;

    private static final LayerKernel KERNEL = LayerKernel.fastest();

    final ResidualShape shape;
    private final LearnerSettings settings;
    private final int parts;
    private final float[][] gradients;
    private final double[][] partLosses;
    private final ThreadLocal<ThreadPass> passes;
    private final float[] turned;
    private NetState state;
    private volatile ThreadLocal<NetworkEvaluator> frozen;
    private double entropy;
    private double squares;
    private long samples;

    ThreadNet(ResidualShape shape, float[] weights, LearnerSettings settings) {
        this.shape = shape;
        this.settings = settings;
        parts = Math.max(2, Math.min(MAX_PARTS, settings.batch() / LESSONS_A_PART));
        gradients = new float[parts][shape.size()];
        partLosses = new double[parts][];
        passes = ThreadLocal.withInitial(() -> new ThreadPass(shape, KERNEL));
        turned = new float[shape.blocks() * shape.width() * shape.width()];
        restore(NetState.fresh(weights));
    }

    NetState state() {
        return copy(state);
    }

    void restore(NetState from) {
        state = copy(from);
        freeze();
    }

    private static NetState copy(NetState from) {
        return new NetState(
                from.weights().clone(),
                from.firstMoments().clone(),
                from.secondMoments().clone(),
                from.average().clone(),
                from.steps());
    }

    long steps() {
        return state.steps();
    }

    /** From now on it answers with the average of its weights as it is now. */
    void freeze() {
        ResidualNetwork network = ResidualNets.network(shape, state.average());
        frozen = ThreadLocal.withInitial(() -> new NetworkEvaluator(network));
    }

    /** What answers on this thread. */
    NetworkEvaluator frozen() {
        return frozen.get();
    }

    /** Mean cross-entropy and root of the mean squared error of equity since the last call. */
    double[] losses() {
        double[] losses = {entropy / samples, Math.sqrt(squares / samples)};
        entropy = 0;
        squares = 0;
        samples = 0;
        return losses;
    }

    /** A step with lessons of a list, those that are drawn. */
    void learn(int[] planes, float[] targets, int[] drawn, float rate) {
        turnFirstMatrices();
        Threads.each(parts, part -> {
            float[] gradient = gradients[part];
            Arrays.fill(gradient, 0);
            ThreadPass pass = passes.get();
            int end = (int) ((long) drawn.length * (part + 1) / parts);
            for (int i = (int) ((long) drawn.length * part / parts); i < end; i += ThreadPass.MAX_LESSONS) {
                int to = Math.min(end, i + ThreadPass.MAX_LESSONS);
                pass.add(new ThreadPass.Drawn(planes, targets, drawn, i, to), state.weights(), turned, gradient);
            }
            partLosses[part] = pass.losses();
        });
        for (double[] losses : partLosses) {
            entropy += losses[0];
            squares += losses[1];
        }
        samples += drawn.length;
        addParts();
        step(drawn.length, rate);
    }

    private void turnFirstMatrices() {
        int width = shape.width();
        Threads.each(shape.blocks(), k -> {
            for (int i = 0; i < width; i++) {
                for (int j = 0; j < width; j++) {
                    turned[(k * width + j) * width + i] = state.weights()[shape.a(k) + i * width + j];
                }
            }
        });
    }

    /** The sum of all parts, in the first; its first matrices are turned to where the weights lie. */
    private void addParts() {
        int length = shape.size();
        Threads.each(SLICES, slice -> {
            int end = (int) ((long) length * (slice + 1) / SLICES);
            for (int part = 1; part < parts; part++) {
                float[] more = gradients[part];
                for (int i = (int) ((long) length * slice / SLICES); i < end; i++) {
                    gradients[0][i] += more[i];
                }
            }
        });
        int width = shape.width();
        for (int k = 0; k < shape.blocks(); k++) {
            for (int i = 0; i < width; i++) {
                for (int j = 0; j < i; j++) {
                    int one = shape.a(k) + i * width + j;
                    int other = shape.a(k) + j * width + i;
                    float value = gradients[0][one];
                    gradients[0][one] = gradients[0][other];
                    gradients[0][other] = value;
                }
            }
        }
    }

    /** AdamW with the gradient of the mean clipped by its length. */
    private void step(int batch, double rate) {
        float[] gradient = gradients[0];
        double length = 0;
        for (float g : gradient) {
            length += (double) g * g;
        }
        length = Math.sqrt(length) / batch;
        float scale = (float) ((length > settings.clip() ? settings.clip() / length : 1) / batch);
        long steps = state.steps() + 1;
        float correct1 = (float) (1 / (1 - Math.pow(settings.beta1(), steps)));
        float correct2 = (float) (1 / (1 - Math.pow(settings.beta2(), steps)));
        float keep = (float) Math.min(settings.average(), steps / (steps + 10.0));
        Threads.each(SLICES, slice -> {
            int end = (int) ((long) gradient.length * (slice + 1) / SLICES);
            for (int i = (int) ((long) gradient.length * slice / SLICES); i < end; i++) {
                float g = gradient[i] * scale;
                float m = settings.beta1() * state.firstMoments()[i] + (1 - settings.beta1()) * g;
                float v = settings.beta2() * state.secondMoments()[i] + (1 - settings.beta2()) * g * g;
                float w = (float) (state.weights()[i] * (1 - rate * settings.decay())
                        - rate * (m * correct1) / (Math.sqrt(v * correct2) + 1e-8));
                state.firstMoments()[i] = m;
                state.secondMoments()[i] = v;
                state.weights()[i] = w;
                state.average()[i] = keep * state.average()[i] + (1 - keep) * w;
            }
        });
        state = new NetState(state.weights(), state.firstMoments(), state.secondMoments(), state.average(), steps);
    }
}
