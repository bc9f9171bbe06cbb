package org.pipwright.cli.report;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.bearoff.Basis;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;

/**
 * What {@code rank} has to say.
 *
 * @param position the position before the play
 * @param roll the roll
 * @param net the net that judged
 * @param legal how many plays are legal
 * @param ranked how many of them were ranked
 * @param shown the best of them, best first
 * @param simulated whether races beyond the tables were simulated
 * @param explanation facts about the best of them; empty if nobody asked
 */
public record RankReport(
        Position position,
        Roll roll,
        NetLabel net,
        int legal,
        int ranked,
        List<RankedPlay> shown,
        boolean simulated,
        Optional<Explanation> explanation) {
    /** What the chances of a play rest on. */
    Basis basis(RankedPlay ranked) {
        return Bases.of(ranked.play().result(), ranked.depth(), simulated);
    }
}
