package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The standings of a rollout.
 *
 * @param trials games of each candidate so far
 * @param lines the candidates, best first
 * @param needed how many standard errors every other candidate must be behind at this look for the best to be clear; 0 if
 *     that was not asked
 * @param clear whether they all are; of cube actions, whether each choice between them is clear, or closer than anybody has
 *     to know
 * @param actions what the games say of the cube actions, if those were played out
 */
public record RolloutReport(
        int trials, List<RolloutLine> lines, double needed, boolean clear, Optional<ActionStanding> actions) {
    /**
     * Copies the lines.
     *
     * @param trials games of each candidate
     * @param lines best first
     * @param needed in standard errors
     * @param clear whether the best is clear
     * @param actions of cube actions
     */
    public RolloutReport {
        lines = List.copyOf(lines);
    }

    /** Of candidates that are compared with the best of them. */
    static RolloutReport of(Moments moments, boolean withCube, double sure) {
        Standing standing = Standing.of(moments, sure);
        List<RolloutLine> lines = new ArrayList<>();
        standing.order()
                .forEach(c -> lines.add(RolloutLine.of(moments, c, moments.difference(c, standing.best()), withCube)));
        return new RolloutReport(moments.trials(), lines, standing.needed(), standing.clear(), Optional.empty());
    }

    /** Of cube actions, each of which costs the side that chooses it what the right one would have been worth more. */
    static RolloutReport ofActions(Moments moments, ActionStanding.Asked asked, double sure) {
        ActionStanding actions = ActionStanding.of(moments, asked, sure);
        List<RolloutLine> lines = new ArrayList<>();
        Standing.of(moments, 0)
                .order()
                .forEach(c ->
                        lines.add(RolloutLine.of(moments, c, ActionStanding.cost(moments, c, actions.values()), true)));
        return new RolloutReport(moments.trials(), lines, actions.needed(), actions.settled(), Optional.of(actions));
    }

    /**
     * The line of a candidate.
     *
     * @param candidate its index among those given
     * @return what is known of it
     */
    public RolloutLine of(int candidate) {
        return lines.stream()
                .filter(line -> line.candidate() == candidate)
                .findFirst()
                .orElseThrow();
    }
}
