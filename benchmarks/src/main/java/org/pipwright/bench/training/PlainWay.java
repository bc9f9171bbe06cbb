package org.pipwright.bench.training;

import org.deeplearning4j.nn.multilayer.MultiLayerNetwork;
import org.nd4j.linalg.factory.Nd4j;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.reference.ReferenceLearner;
import org.pipwright.training.selfplay.Samples;

/**
 * TD(0) self-play as one would write it first: Deeplearning4j's {@code output()} once for the results of each roll, its
 * {@code fit()} once for each move, one network for the whole game.
 */
final class PlainWay implements AutoCloseable {
    private static final double RATE = 0.002;

    private final FeatureSet features;
    private final ReferenceLearner learner;
    private final GameLoop loop = new GameLoop();
    private final int[] child = new int[Planes.STRIDE];
    private int moves;

    PlainWay(Network start) {
        features = start.features();
        learner = new ReferenceLearner(start);
    }

    /** Plays one game, learning from every move; returns the number of moves. */
    int play(Dice dice) {
        moves = 0;
        loop.play(Position.start(), dice.opening(), this::choose, this::choose, dice, dice, (p, r, l, c) -> moves++);
        return moves;
    }

    private int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        float[] chances = chances(legal.results(), legal.size());
        int best = 0;
        for (int i = 1; i < legal.size(); i++) {
            if (Chances.equity(chances, i * Outcomes.COUNT) > Chances.equity(chances, best * Outcomes.COUNT)) {
                best = i;
            }
        }
        Samples one = new Samples(1);
        one.add(planes, at, chances, best * Outcomes.COUNT);
        learner.fit(one, new int[] {0}, 0, 1, RATE);
        return best;
    }

    /** Six chances of the mover after each result. */
    float[] chances(int[] results, int count) {
        float[] inputs = new float[count * features.inputs()];
        for (int i = 0; i < count; i++) {
            Planes.copySwapped(results, i * Planes.STRIDE, child, 0);
            features.encode(child, 0, inputs, i * features.inputs());
        }
        MultiLayerNetwork network = learner.theirs();
        float[] scores = network.output(Nd4j.create(inputs, new long[] {count, features.inputs()}, 'c'))
                .dup('c')
                .data()
                .asFloat();
        float[] chances = new float[count * Outcomes.COUNT];
        for (int i = 0; i < count; i++) {
            int to = i * Outcomes.COUNT;
            if (!FinishedGames.write(results, i * Planes.STRIDE, chances, to)) {
                Planes.copySwapped(results, i * Planes.STRIDE, child, 0);
                softmax(scores, to, PossibleOutcomes.of(child, 0), chances);
                Chances.swap(chances, to);
            }
        }
        return chances;
    }

    private static void softmax(float[] scores, int at, int possible, float[] out) {
        double sum = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            sum += (possible >> k & 1) != 0 ? Math.exp(scores[at + k]) : 0;
        }
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[at + k] = (possible >> k & 1) != 0 ? (float) (Math.exp(scores[at + k]) / sum) : 0;
        }
    }

    @Override
    public void close() {
        learner.close();
    }
}
