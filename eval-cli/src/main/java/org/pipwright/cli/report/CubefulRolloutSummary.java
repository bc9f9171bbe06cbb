package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;

/**
 * What {@code rollout} has to say with the cube.
 *
 * @param position the position asked about
 * @param roll the roll whose plays were compared, or null if the cube actions before the roll were
 * @param cube the cube, seen from the side on roll
 * @param stakes what is played for, seen from that side
 * @param net the net that played and judged
 * @param settings what decided the numbers
 * @param legal how many plays are legal; 0 without a roll
 * @param plays the plays that were compared; none without a roll
 * @param actions names of the candidates without a roll: {@code no double} and what a double may lead to
 * @param report the standings
 */
public record CubefulRolloutSummary(
        Position position,
        Roll roll,
        CubeState cube,
        Stakes stakes,
        NetLabel net,
        RolloutSettings settings,
        int legal,
        List<Play> plays,
        List<String> actions,
        CubefulRolloutReport report) {
    /** Whether a match is played, so that values are chances to win it. */
    boolean match() {
        return stakes instanceof MatchStakes;
    }

    /** What a candidate is called. */
    String name(int candidate) {
        return roll == null ? actions.get(candidate) : plays.get(candidate).toString();
    }
}
