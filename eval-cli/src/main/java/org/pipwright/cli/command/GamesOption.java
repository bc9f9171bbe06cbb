package org.pipwright.cli.command;

import org.pipwright.cli.console.UserError;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.rollout.RolloutSettings;
import picocli.CommandLine.Option;

/** Playing positions out as a part of ranking or odds. */
final class GamesOption {
    @Option(
            names = "--rollout",
            paramLabel = "N",
            description = "Play N games from the position, or from its best few plays, with the luck of the rolls taken"
                    + " off; pipwright rollout offers more.")
    private Integer games;

    boolean given() {
        return games != null;
    }

    /** An effort with these games on top, if there are any. */
    Effort on(Effort effort) {
        if (!given()) {
            return effort;
        }
        try {
            return effort.withGames(RolloutSettings.DEFAULT.withTrials(games).trials());
        } catch (IllegalArgumentException e) {
            throw new UserError("--rollout: " + e.getMessage());
        }
    }
}
