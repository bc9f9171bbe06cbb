package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The standings of a rollout with the cube.
 *
 * @param trials games of each candidate so far
 * @param lines the candidates, best first
 * @param needed how many standard errors every other candidate must be behind at this look for the best to be clear; 0 if
 *     that was not asked
 * @param clear whether they all are; of cube actions, whether each choice between them is clear, or closer than anybody has
 *     to know
 * @param actions what the games say of the cube actions, if those were played out
 */
public record CubefulRolloutReport(
        int trials, List<CubefulLine> lines, double needed, boolean clear, Optional<ActionStanding> actions) {
    /**
     * Copies the lines.
     *
     * @param trials games of each candidate
     * @param lines best first
     * @param needed in standard errors
     * @param clear whether the best is clear
     * @param actions of cube actions
     */
    public CubefulRolloutReport {
        lines = List.copyOf(lines);
    }

    /** Of plays, which are compared with the best of them. */
    static CubefulRolloutReport ofPlays(Moments moments, double sure) {
        Standing standing = Standing.of(moments, sure);
        List<CubefulLine> lines = new ArrayList<>();
        standing.order().forEach(c -> lines.add(line(moments, c, moments.difference(c, standing.best()))));
        return new CubefulRolloutReport(moments.trials(), lines, standing.needed(), standing.clear(), Optional.empty());
    }

    /** Of cube actions, each of which costs the side that chooses it what the right one would have been worth more. */
    static CubefulRolloutReport ofActions(Moments moments, ActionStanding.Asked asked, double sure) {
        ActionStanding actions = ActionStanding.of(moments, asked, sure);
        List<CubefulLine> lines = new ArrayList<>();
        Standing.of(moments, 0)
                .order()
                .forEach(c -> lines.add(line(moments, c, ActionStanding.cost(moments, c, actions.values()))));
        return new CubefulRolloutReport(
                moments.trials(), lines, actions.needed(), actions.settled(), Optional.of(actions));
    }

    private static CubefulLine line(Moments moments, int candidate, Estimate behind) {
        return new CubefulLine(
                candidate,
                moments.estimate(candidate, Moments.VALUE),
                behind,
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
