package org.pipwright.engine.search;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The definition of lookahead written down: no pruning, no memory, one list of plays after another. */
final class NaiveLookahead {
    private final PositionEvaluator evaluator;

    NaiveLookahead(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    /** Chances of the side on roll of an unfinished position, with lookahead 1 or more. */
    float[] average(Position position, int lookahead) {
        double[] sums = new double[Outcomes.COUNT];
        for (Roll roll : Roll.all()) {
            float[] best = best(position, Plays.legal(position, roll), lookahead - 1);
            for (int k = 0; k < Outcomes.COUNT; k++) {
                sums[k] += roll.ways() * (double) best[k];
            }
        }
        float[] mean = new float[Outcomes.COUNT];
        for (int k = 0; k < Outcomes.COUNT; k++) {
            mean[k] = (float) (sums[k] / 36);
        }
        return mean;
    }

    /** Chances of the mover after the best of some plays. */
    float[] best(Position position, List<Play> plays, int lookahead) {
        float[] best = null;
        for (float[] value : values(position, plays, lookahead)) {
            if (best == null || Chances.equity(value, 0) > Chances.equity(best, 0)) {
                best = value;
            }
        }
        return best;
    }

    /** Chances of the mover after each play. */
    List<float[]> values(Position position, List<Play> plays, int lookahead) {
        List<float[]> values = new ArrayList<>();
        for (Play play : plays) {
            int[] planes = play.result().toPlanes();
            float[] value = new float[Outcomes.COUNT];
            if (FinishedGames.write(planes, 0, value, 0)) {
                values.add(value);
            } else if (lookahead == 0) {
                evaluator.evaluateResults(position.toPlanes(), 0, planes, 1, value);
                values.add(value);
            } else {
                value = average(play.next(), lookahead);
                Chances.swap(value, 0);
                values.add(value);
            }
        }
        return values;
    }
}
