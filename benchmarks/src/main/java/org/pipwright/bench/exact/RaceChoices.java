package org.pipwright.bench.exact;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.pipwright.bench.strength.Chooser;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** What somebody's plays lose by the chances of a judge who knows, in points a choice. */
final class RaceChoices {
    private double sum;
    private double worst;
    private int count;

    /** Plays what has the highest equity by some chances, the first of equals. The judge knows finished games too. */
    static Chooser by(Function<Position, Outcomes> judge) {
        return (position, roll) -> {
            Play chosen = null;
            double most = Double.NEGATIVE_INFINITY;
            for (Play play : Plays.legal(position, roll)) {
                double judged = equity(play, judge);
                if (judged > most) {
                    most = judged;
                    chosen = play;
                }
            }
            return chosen.result();
        };
    }

    /** Adds a roll that leaves a choice; others are passed over. The judge knows finished games too. */
    void add(Position position, Roll roll, Chooser chooser, Function<Position, Outcomes> exact) {
        List<Play> plays = Plays.legal(position, roll);
        if (plays.size() < 2) {
            return;
        }
        Position chosen = chooser.choose(position, roll);
        double best = Double.NEGATIVE_INFINITY;
        double taken = Double.NEGATIVE_INFINITY;
        for (Play play : plays) {
            double truth = equity(play, exact);
            best = Math.max(best, truth);
            if (play.result().equals(chosen)) {
                taken = truth;
            }
        }
        sum += best - taken;
        worst = Math.max(worst, best - taken);
        count++;
    }

    /** For the side that plays. */
    private static double equity(Play play, Function<Position, Outcomes> judge) {
        return -judge.apply(play.next()).equity();
    }

    int count() {
        return count;
    }

    /** Points lost by the choice that lost most, at least 0. */
    double worst() {
        return worst;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.5f, %.5f (%,d choices)", sum / count, worst, count);
    }
}
