package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * The standings of a rollout.
 *
 * @param trials games of each candidate so far
 * @param lines the candidates, best first
 * @param needed how many standard errors every other candidate must be behind at this look for the best to be clear; 0
 *     if that was not asked
 * @param clear whether they all are
 */
public record RolloutReport(int trials, List<RolloutLine> lines, double needed, boolean clear) {
    /**
     * Copies the lines.
     *
     * @param trials games of each candidate
     * @param lines best first
     * @param needed in standard errors
     * @param clear whether the best is clear
     */
    public RolloutReport {
        lines = List.copyOf(lines);
    }

    static RolloutReport of(Moments moments, double sure) {
        Standing standing = Standing.of(moments, sure);
        List<RolloutLine> lines = new ArrayList<>();
        standing.order().forEach(c -> lines.add(line(moments, c, standing.best())));
        return new RolloutReport(moments.trials(), lines, standing.needed(), standing.clear());
    }

    private static RolloutLine line(Moments moments, int candidate, int best) {
        List<Estimate> chances = new ArrayList<>();
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances.add(moments.estimate(candidate, Trial.CHANCES + k));
        }
        return new RolloutLine(
                candidate,
                chances,
                moments.estimate(candidate, Moments.VALUE),
                moments.difference(candidate, best),
                moments.estimate(candidate, Moments.PLAIN),
                moments.reduction(candidate));
    }
}
