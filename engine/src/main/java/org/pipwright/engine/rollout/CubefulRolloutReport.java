package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;

/**
 * The standings of a rollout with the cube.
 *
 * @param trials games of each candidate so far
 * @param lines the candidates, best first
 * @param needed how many standard errors every other candidate must be behind at this look for the best to be clear; 0 if
 *     that was not asked
 * @param clear whether they all are
 */
public record CubefulRolloutReport(int trials, List<CubefulLine> lines, double needed, boolean clear) {
    /**
     * Copies the lines.
     *
     * @param trials games of each candidate
     * @param lines best first
     * @param needed in standard errors
     * @param clear whether the best is clear
     */
    public CubefulRolloutReport {
        lines = List.copyOf(lines);
    }

    static CubefulRolloutReport of(Moments moments, double sure) {
        Standing standing = Standing.of(moments, sure);
        List<CubefulLine> lines = new ArrayList<>();
        standing.order().forEach(c -> lines.add(line(moments, c, standing.best())));
        return new CubefulRolloutReport(moments.trials(), lines, standing.needed(), standing.clear());
    }

    private static CubefulLine line(Moments moments, int candidate, int best) {
        return new CubefulLine(
                candidate,
                moments.estimate(candidate, Moments.VALUE),
                moments.difference(candidate, best),
                moments.estimate(candidate, Moments.PLAIN),
                moments.reduction(candidate),
                moments.mean(candidate, CubefulTrial.DOUBLED),
                moments.mean(candidate, CubefulTrial.PASSED),
                moments.mean(candidate, CubefulTrial.CUBE));
    }

    /**
     * The line of a candidate.
     *
     * @param candidate its index among those given
     * @return what is known of it
     */
    public CubefulLine of(int candidate) {
        return lines.stream()
                .filter(line -> line.candidate() == candidate)
                .findFirst()
                .orElseThrow();
    }
}
