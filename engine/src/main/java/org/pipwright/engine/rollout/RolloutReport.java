package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.Comparator;
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

    static RolloutReport of(Moments moments, int candidates, double sure) {
        List<Integer> order = new ArrayList<>();
        for (int c = 0; c < candidates; c++) {
            order.add(c);
        }
        order.sort(Comparator.comparingDouble(c -> -moments.mean(c, Moments.EQUITY)));
        List<RolloutLine> lines = new ArrayList<>();
        order.forEach(c -> lines.add(line(moments, c, order.get(0))));
        boolean asked = sure > 0 && candidates > 1;
        double needed = asked ? new RepeatedLooks(sure, candidates - 1).needed(moments.trials()) : 0;
        boolean clear = asked && lines.stream().skip(1).allMatch(line -> isBehind(line, needed));
        return new RolloutReport(moments.trials(), lines, needed, clear);
    }

    private static boolean isBehind(RolloutLine line, double needed) {
        return -line.behind().mean() > needed * line.behind().standardError();
    }

    private static RolloutLine line(Moments moments, int candidate, int best) {
        List<Estimate> chances = new ArrayList<>();
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances.add(moments.estimate(candidate, k));
        }
        return new RolloutLine(
                candidate,
                chances,
                moments.estimate(candidate, Moments.EQUITY),
                moments.difference(candidate, best),
                moments.estimate(candidate, Moments.PLAIN),
                moments.variance(candidate, Moments.PLAIN) / moments.variance(candidate, Moments.EQUITY));
    }
}
