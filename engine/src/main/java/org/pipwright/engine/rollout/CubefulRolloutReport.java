package org.pipwright.engine.rollout;

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
