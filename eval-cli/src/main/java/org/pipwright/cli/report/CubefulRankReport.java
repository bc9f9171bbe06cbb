package org.pipwright.cli.report;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * What {@code rank} has to say with the cube.
 *
 * @param position the position before the play
 * @param roll the roll
 * @param cube the cube, seen from the side that plays
 * @param stakes what is played for, seen from that side
 * @param net the net that judged
 * @param legal how many plays are legal
 * @param ranked how many of them were ranked
 * @param shown the best of them, best first
 * @param bestEquity highest cubeless equity among those ranked
 * @param explanation facts about the best of them, with the cube left out; empty if nobody asked
 */
public record CubefulRankReport(
        Position position,
        Roll roll,
        CubeState cube,
        Stakes stakes,
        NetLabel net,
        int legal,
        int ranked,
        List<CubefulPlay> shown,
        double bestEquity,
        Optional<Explanation> explanation) {

    /** Whether a match is played, so that values are chances to win it. */
    boolean match() {
        return stakes instanceof MatchStakes;
    }
}
