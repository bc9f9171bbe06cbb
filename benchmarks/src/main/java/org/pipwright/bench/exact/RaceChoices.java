package org.pipwright.bench.exact;

import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** What plays chosen by one judge's chances lose against another's, in points a choice. */
final class RaceChoices {
    private double sum;
    private double worst;
    private int count;

    /** Adds a random roll of a position that leaves a choice; others are passed over. Judges know finished games too. */
    void add(
            Position position,
            SplittableRandom random,
            Function<Position, Outcomes> judge,
            Function<Position, Outcomes> exact) {
        Roll roll = Roll.of(1 + random.nextInt(6), 1 + random.nextInt(6));
        List<Play> plays = Plays.legal(position, roll);
        if (plays.size() < 2) {
            return;
        }
        double best = Double.NEGATIVE_INFINITY;
        double chosen = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (Play play : plays) {
            double truth = equity(play, exact);
            double judged = equity(play, judge);
            best = Math.max(best, truth);
            if (judged > most) {
                most = judged;
                chosen = truth;
            }
        }
        sum += best - chosen;
        worst = Math.max(worst, best - chosen);
        count++;
    }

    /** For the side that plays. */
    private static double equity(Play play, Function<Position, Outcomes> judge) {
        return -judge.apply(play.next()).equity();
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.4f, %.4f (%d choices)", sum / count, worst, count);
    }
}
