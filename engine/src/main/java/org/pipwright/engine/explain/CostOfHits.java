package org.pipwright.engine.explain;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.measures.Shots;
import org.pipwright.engine.play.Step;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * What it is worth to the side on roll that it may hit: the mean over its rolls of how much its best play has over its best
 * play that hits nothing, by the judge without lookahead. Where every play of a roll hits, its best is held against the mean of
 * the plays that hit nothing with the other rolls.
 */
final class CostOfHits {
    private static final double THROWS = 36;
    private static final Effort QUICK = Effort.STATIC.withRaces(false);
    private double gained;
    private double forced;
    private int forcedThrows;
    private double quiet;
    private int quietThrows;

    private CostOfHits() {}

    /** Points per game, at least 0; 0 if every play of every roll hits. */
    static double of(Position position, Judge judge, Progress progress) {
        Function<Roll, List<PlayVerdict>> judging =
                roll -> judge.ask(Question.of(position, roll), QUICK, progress).plays();
        // A roll that hits nothing gains nothing, and most rolls are such: judging their plays would be most of the
        // work.
        Map<Roll, List<PlayVerdict>> judged =
                Shots.of(position).rolls().stream().collect(Collectors.toMap(roll -> roll, judging));
        if (judged.values().stream().anyMatch(plays -> quiet(plays).isEmpty())) {
            Roll.all().forEach(roll -> judged.computeIfAbsent(roll, judging));
        }
        CostOfHits cost = new CostOfHits();
        Roll.all().stream().filter(judged::containsKey).forEach(roll -> cost.add(roll, judged.get(roll)));
        return cost.mean();
    }

    /** The best play that hits nothing. */
    private static Optional<PlayVerdict> quiet(List<PlayVerdict> plays) {
        return plays.stream()
                .filter(each -> each.play().steps().stream().noneMatch(Step::hit))
                .findFirst();
    }

    private void add(Roll roll, List<PlayVerdict> plays) {
        double best = plays.get(0).equity();
        quiet(plays)
                .ifPresentOrElse(
                        still -> {
                            gained += roll.ways() * (best - still.equity());
                            quiet += roll.ways() * still.equity();
                            quietThrows += roll.ways();
                        },
                        () -> {
                            forced += roll.ways() * best;
                            forcedThrows += roll.ways();
                        });
    }

    private double mean() {
        double more = quietThrows == 0 ? 0 : forced - forcedThrows * quiet / quietThrows;
        return (gained + Math.max(0, more)) / THROWS;
    }
}
