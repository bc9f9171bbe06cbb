package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;

/**
 * What {@code rollout} has to say.
 *
 * @param question what was asked about: the position before or after a roll, with or without the cube
 * @param net the net that played and judged
 * @param settings what decided the numbers
 * @param legal how many plays are legal; 0 without a roll
 * @param plays the plays that were compared; none without a roll
 * @param names of the candidates: plays; with the cube {@code no double} and what a double may lead to; without it and
 *     without a roll {@code before the roll}
 * @param report the standings
 */
public record RolloutSummary(
        Question question,
        NetLabel net,
        RolloutSettings settings,
        int legal,
        List<Play> plays,
        List<String> names,
        RolloutReport report) {
    /** Whether plays of a roll were compared. */
    boolean ofPlays() {
        return question.roll() != null;
    }

    /** Whether a match is played, so that values are chances to win it. */
    boolean match() {
        return question.stakes() instanceof MatchStakes;
    }
}
