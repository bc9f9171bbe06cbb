package org.pipwright.engine.rollout;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Small races worked out by recursion from their ends, which terminates because checkers only move forward. Either both
 * sides play what a given evaluator likes best, or what is really best.
 */
final class RaceSolver implements PositionEvaluator {
    /** Null if both sides play what is really best. */
    private final PositionEvaluator policy;

    private final Map<Position, double[]> solved = new HashMap<>();

    private RaceSolver(PositionEvaluator policy) {
        this.policy = policy;
    }

    static RaceSolver ofPolicy(PositionEvaluator policy) {
        return new RaceSolver(policy);
    }

    static RaceSolver ofBestPlay() {
        return new RaceSolver(null);
    }

    /** Six chances of the side on roll. */
    double[] chances(Position position) {
        double[] known = solved.get(position);
        if (known == null) {
            known = new double[Outcomes.COUNT];
            for (Roll roll : Roll.all()) {
                double[] reply = chosen(position, Plays.legal(position, roll));
                for (int k = 0; k < Outcomes.COUNT; k++) {
                    known[k] += roll.probability() * reply[k];
                }
            }
            solved.put(position, known);
        }
        return known;
    }

    private double[] chosen(Position position, List<Play> plays) {
        double[] best = null;
        double highest = Double.NEGATIVE_INFINITY;
        for (Play play : plays) {
            double liking = policy == null ? equity(after(play)) : liking(position, play);
            if (liking > highest) {
                highest = liking;
                best = after(play);
            }
        }
        return best;
    }

    private double liking(Position position, Play play) {
        float[] chances = new float[Outcomes.COUNT];
        policy.evaluateResults(position.toPlanes(), 0, play.result().toPlanes(), 1, chances);
        return Chances.equity(chances, 0);
    }

    /** Chances of the mover. */
    private double[] after(Play play) {
        float[] over = new float[Outcomes.COUNT];
        double[] chances = new double[Outcomes.COUNT];
        if (FinishedGames.write(play.result().toPlanes(), 0, over, 0)) {
            for (int k = 0; k < Outcomes.COUNT; k++) {
                chances[k] = over[k];
            }
            return chances;
        }
        double[] theirs = chances(play.next());
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[k] = theirs[(k + 3) % Outcomes.COUNT];
        }
        return chances;
    }

    static double equity(double[] chances) {
        return chances[0] + 2 * chances[1] + 3 * chances[2] - chances[3] - 2 * chances[4] - 3 * chances[5];
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        double[] chances = chances(Position.ofPlanes(planes, at));
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] = (float) chances[k];
        }
    }
}
