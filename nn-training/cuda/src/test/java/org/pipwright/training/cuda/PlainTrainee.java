package org.pipwright.training.cuda;

import java.util.List;
import java.util.Map;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;

/** A network that learns by plain loops and answers, frozen, as engine evaluates it: the twin of net and learner on a card. */
final class PlainTrainee {
    final ResidualShape shape;
    private final LearnerSettings settings;
    private NetState state;
    private NetworkEvaluator frozen;
    private double entropy;
    private double squares;
    private int samples;

    PlainTrainee(ResidualShape shape, float[] weights, LearnerSettings settings) {
        this.shape = shape;
        this.settings = settings;
        restore(NetState.fresh(weights));
    }

    NetState state() {
        return new NetState(
                state.weights().clone(),
                state.firstMoments().clone(),
                state.secondMoments().clone(),
                state.average().clone(),
                state.steps());
    }

    void restore(NetState from) {
        state = new NetState(
                from.weights().clone(),
                from.firstMoments().clone(),
                from.secondMoments().clone(),
                from.average().clone(),
                from.steps());
        freeze();
    }

    void freeze() {
        frozen = new NetworkEvaluator(new Model(ResidualNets.network(shape, state.average()), Map.of()));
    }

    NetworkEvaluator frozen() {
        return frozen;
    }

    double[] losses() {
        double[] losses = {entropy / samples, Math.sqrt(squares / samples)};
        entropy = 0;
        squares = 0;
        samples = 0;
        return losses;
    }

    void learn(List<PlainMemory.Lesson> batch, double rate) {
        PlainNet net = new PlainNet(shape, state.weights());
        double[] gradient = new double[shape.size()];
        for (PlainMemory.Lesson lesson : batch) {
            double[] chances = net.addGradient(lesson.planes(), 0, lesson.target(), 0, gradient);
            double error = PlainNet.equity(chances) - PlainNet.equity(lesson.target());
            for (int k = 0; k < 6; k++) {
                entropy -= chances[k] > 0 ? lesson.target()[k] * Math.log(chances[k]) : 0;
            }
            squares += error * error;
            samples++;
        }
        step(gradient, batch.size(), rate);
    }

    /** AdamW with the gradient of the mean clipped by its length. */
    private void step(double[] gradient, int batch, double rate) {
        double length = 0;
        for (double g : gradient) {
            length += g * g;
        }
        length = Math.sqrt(length) / batch;
        double scale = (length > settings.clip() ? settings.clip() / length : 1) / batch;
        long steps = state.steps() + 1;
        double correct1 = 1 - Math.pow(settings.beta1(), steps);
        double correct2 = 1 - Math.pow(settings.beta2(), steps);
        double keep = Math.min(settings.average(), steps / (steps + 10.0));
        for (int i = 0; i < gradient.length; i++) {
            double g = gradient[i] * scale;
            double m = settings.beta1() * state.firstMoments()[i] + (1 - settings.beta1()) * g;
            double v = settings.beta2() * state.secondMoments()[i] + (1 - settings.beta2()) * g * g;
            double w = state.weights()[i] * (1 - rate * settings.decay())
                    - rate * (m / correct1) / (Math.sqrt(v / correct2) + 1e-8);
            state.firstMoments()[i] = (float) m;
            state.secondMoments()[i] = (float) v;
            state.weights()[i] = (float) w;
            state.average()[i] = (float) (keep * state.average()[i] + (1 - keep) * w);
        }
        state = new NetState(state.weights(), state.firstMoments(), state.secondMoments(), state.average(), steps);
    }
}
