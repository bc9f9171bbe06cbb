package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;

/**
 * What {@code rollout} has to say.
 *
 * @param position the position asked about
 * @param roll the roll whose plays were compared, or null if the chances before the roll were asked for
 * @param net the net that played and judged
 * @param settings what decided the numbers
 * @param legal how many plays are legal; 0 without a roll
 * @param candidates the plays that were compared; none without a roll
 * @param report the standings
 */
public record RolloutSummary(
        Position position,
        Roll roll,
        NetLabel net,
        RolloutSettings settings,
        int legal,
        List<Play> candidates,
        RolloutReport report) {}
