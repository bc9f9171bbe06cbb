package org.pipwright.engine.explain;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Step;
import org.pipwright.engine.position.Planes;
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
        CostOfHits cost = new CostOfHits();
        Map<Roll, Hits> hits = hits(position);
        boolean quietCounts = hits.containsValue(Hits.ALL);
        hits.forEach((roll, some) -> {
            // A roll that hits nothing gains nothing, and most rolls are such: judging their plays would be most of the
            // work.
            if (quietCounts || some != Hits.NONE) {
                cost.add(
                        roll,
                        judge.ask(Question.of(position, roll), QUICK, progress).plays());
            }
        });
        return cost.mean();
    }

    /** How many plays of a roll hit. */
    private enum Hits {
        NONE,
        SOME,
        ALL
    }

    private static Map<Roll, Hits> hits(Position position) {
        int[] planes = position.toPlanes();
        int bar = Planes.count(planes, Planes.SIDE, Planes.BAR);
        PlayGenerator generator = new PlayGenerator();
        Map<Roll, Hits> hits = new LinkedHashMap<>();
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int hitting = 0;
            for (int i = 0; i < count; i++) {
                hitting += Planes.count(generator.results(), i * Planes.STRIDE + Planes.SIDE, Planes.BAR) > bar ? 1 : 0;
            }
            hits.put(roll, hitting == 0 ? Hits.NONE : hitting < count ? Hits.SOME : Hits.ALL);
        }
        return hits;
    }

    private void add(Roll roll, List<PlayVerdict> plays) {
        double best = plays.get(0).equity();
        for (PlayVerdict each : plays) {
            if (each.play().steps().stream().noneMatch(Step::hit)) {
                gained += roll.ways() * (best - each.equity());
                quiet += roll.ways() * each.equity();
                quietThrows += roll.ways();
                return;
            }
        }
        forced += roll.ways() * best;
        forcedThrows += roll.ways();
    }

    private double mean() {
        double more = quietThrows == 0 ? 0 : forced - forcedThrows * quiet / quietThrows;
        return (gained + Math.max(0, more)) / THROWS;
    }
}
