package org.pipwright.engine.duel;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** Small races by plain recursion over all rolls: under best play, or between two players that leave ties alone. */
final class ExactRace implements PositionEvaluator {
    private final Map<Position, double[]> known = new HashMap<>();

    /** Six chances of the side on roll when both sides play for the most points. */
    double[] chances(Position position) {
        double[] chances = known.get(position);
        if (chances == null) {
            chances = new double[Outcomes.COUNT];
            for (Roll roll : Roll.all()) {
                double[] best = best(position, roll);
                for (int k = 0; k < Outcomes.COUNT; k++) {
                    chances[k] += roll.probability() * best[k];
                }
            }
            known.put(position, chances);
        }
        return chances;
    }

    private double[] best(Position position, Roll roll) {
        double[] best = null;
        PlayGenerator generator = new PlayGenerator();
        int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        for (int i = 0; i < count; i++) {
            Position result = Position.ofPlanes(generator.results(), i * Planes.STRIDE);
            double[] after = new double[Outcomes.COUNT];
            if (result.finished()) {
                after[GameResult.of(result).ordinal()] = 1;
            } else {
                double[] theirs = chances(result.swapped());
                Arrays.setAll(after, k -> theirs[(k + 3) % 6]);
            }
            best = best == null || equity(after) > equity(best) ? after : best;
        }
        return best;
    }

    static double equity(double[] c) {
        return c[0] + 2 * c[1] + 3 * c[2] - c[3] - 2 * c[4] - 3 * c[5];
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        double[] chances = chances(Position.ofPlanes(planes, at));
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] = (float) chances[k];
        }
    }

    /** Points of the side on roll when two given players play. */
    static double points(Position position, Player onRoll, Player other) {
        return points(position, onRoll, other, new HashMap<>(), new HashMap<>());
    }

    private static double points(
            Position position,
            Player mover,
            Player waiter,
            Map<Position, Double> known,
            Map<Position, Double> swapped) {
        Double points = known.get(position);
        if (points == null) {
            points = 0.0;
            for (Roll roll : Roll.all()) {
                PlayGenerator generator = new PlayGenerator();
                int[] planes = position.toPlanes();
                generator.generate(planes, 0, roll.high(), roll.low());
                int chosen = mover.choose(planes, 0, generator, null);
                Position result = Position.ofPlanes(generator.results(), chosen * Planes.STRIDE);
                double after = result.finished()
                        ? GameResult.of(result).points()
                        : -points(result.swapped(), waiter, mover, swapped, known);
                points += roll.probability() * after;
            }
            known.put(position, points);
        }
        return points;
    }
}
