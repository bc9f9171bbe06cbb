package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

class RollLuckTest {
    private static final Model MODEL = RandomModels.of(3, 16);

    @ParameterizedTest
    @ValueSource(ints = {15, 3})
    void isTheBestReplyLessTheMeanAndNothingOnAverage(int checkers) {
        RollLuck luck = new RollLuck(new NetworkEvaluator(MODEL));
        NaiveLookahead naive = new NaiveLookahead(new NetworkEvaluator(MODEL));
        for (Position position : new RandomWalk(checkers, 19).next(60)) {
            float[] mean = naive.average(position, 1);
            double[] all = new double[Outcomes.COUNT];
            for (Roll roll : Roll.all()) {
                double[] measured = new double[Outcomes.COUNT];
                luck.measure(position.toPlanes(), 0, roll, measured);
                float[] best = naive.best(position, Plays.legal(position, roll), 0);
                for (int k = 0; k < Outcomes.COUNT; k++) {
                    assertEquals(best[k] - mean[k], measured[k], 1e-6);
                    all[k] += roll.ways() * measured[k];
                }
            }
            for (double sum : all) {
                assertEquals(0, sum, 1e-12);
            }
        }
    }
}
