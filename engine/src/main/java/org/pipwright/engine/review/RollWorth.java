package org.pipwright.engine.review;

import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * The luck of rolls in the unit of a review: the worth of the best play of a roll less the mean of that over all rolls
 * there could have been, both without lookahead. Over many rolls it averages out. Unlike {@link
 * org.pipwright.engine.search.RollLuck}, which takes luck off the results of games and may take the best plays of cubeless
 * play for that, this asks for the best play with the cube and at the score. Serves one thread.
 */
final class RollWorth {
    private final PositionEvaluator evaluator;

    RollWorth(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    /** The luck of a roll, positive if it is good; the first roll of a game is never a double. */
    double luck(Position position, Roll roll, boolean opening, Worth worth) {
        double sum = 0;
        int throwsInAll = 0;
        double rolled = 0;
        for (Roll other : opening ? Roll.opening() : Roll.all()) {
            double best = best(position, other, worth);
            sum += other.ways() * best;
            throwsInAll += other.ways();
            rolled = other.equals(roll) ? best : rolled;
        }
        return rolled - sum / throwsInAll;
    }

    private double best(Position position, Roll roll, Worth worth) {
        double best = Double.NEGATIVE_INFINITY;
        List<Play> plays = Plays.legal(position, roll);
        float[] chances = new float[plays.size() * Outcomes.COUNT];
        evaluator.evaluateResults(position.toPlanes(), 0, results(plays), plays.size(), chances);
        for (int i = 0; i < plays.size(); i++) {
            best = Math.max(best, worth.at(plays.get(i), Outcomes.of(chances, i * Outcomes.COUNT)));
        }
        return best;
    }

    private static int[] results(List<Play> plays) {
        int[] results = new int[plays.size() * Planes.STRIDE];
        for (int i = 0; i < plays.size(); i++) {
            plays.get(i).result().copyTo(results, i * Planes.STRIDE);
        }
        return results;
    }
}
