package org.pipwright.engine.explain;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.measures.Shots;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollReply;

/**
 * What it is worth to the side on roll that it may hit: the mean over its rolls of how much its best play has over its best
 * play that hits nothing, without lookahead. Where every play of a roll hits, its best is held against the mean of the plays
 * that hit nothing with the other rolls.
 */
final class CostOfHits {
    private static final double THROWS = 36;
    private double gained;
    private double forced;
    private int forcedThrows;
    private double quiet;
    private int quietThrows;

    private CostOfHits() {}

    /**
     * Points per game, at least 0; 0 if every play of every roll hits.
     *
     * @param position what is on the board before the rolls
     * @param replies the best play of each roll
     * @param judge judges the others
     * @param progress asked whether to stop
     */
    static double of(Position position, List<RollReply> replies, Judge judge, Progress progress) {
        Set<Roll> hitting = Set.copyOf(Shots.of(position).rolls());
        List<RollReply> hits =
                replies.stream().filter(reply -> hitting.contains(reply.roll())).collect(Collectors.toList());
        List<Roll> rolls = hits.stream().map(RollReply::roll).collect(Collectors.toList());
        List<Optional<Outcomes>> quiet = judge.quietReplies(position, rolls, progress);
        CostOfHits cost = new CostOfHits();
        for (int i = 0; i < hits.size(); i++) {
            cost.add(hits.get(i), quiet.get(i));
        }
        replies.stream()
                .filter(reply -> !hitting.contains(reply.roll()))
                .forEach(reply -> cost.add(reply, Optional.of(reply.outcomes())));
        return cost.mean();
    }

    private void add(RollReply reply, Optional<Outcomes> still) {
        int ways = reply.roll().ways();
        double best = reply.outcomes().equity();
        if (still.isPresent()) {
            gained += ways * Math.max(0, best - still.get().equity());
            quiet += ways * still.get().equity();
            quietThrows += ways;
        } else {
            forced += ways * best;
            forcedThrows += ways;
        }
    }

    private double mean() {
        double more = quietThrows == 0 ? 0 : forced - forcedThrows * quiet / quietThrows;
        return (gained + Math.max(0, more)) / THROWS;
    }
}
