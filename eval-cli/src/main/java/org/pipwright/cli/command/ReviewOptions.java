package org.pipwright.cli.command;

import org.pipwright.cli.console.UserError;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How deeply a review looks, and where it keeps what it has found. */
final class ReviewOptions {
    @Option(
            names = "--lookahead",
            paramLabel = "N",
            description =
                    "Average over N future rolls, both sides playing and doubling for the most with the cube and at the"
                            + " score, 0 to " + LookaheadSettings.MAX + ". Default: 1.")
    private int lookahead = 1;

    @Option(
            names = "--rollout",
            paramLabel = "N",
            description = "Play N games with the cube, luck taken off, from each decision that lookahead finds to cost"
                    + " something: from the play that was made and its best rivals, or from each action with the"
                    + " cube.")
    private int games;

    @Option(names = "--seed", paramLabel = "N", description = "Seed of the dice of those games. Default: 1.")
    private long seed = 1;

    @Mixin
    private KeptOptions kept;

    @Mixin
    private RacesOption races;

    ReviewSettings settings() {
        if (games < 0) {
            throw new UserError("--rollout is " + games + ": play 1 game or more");
        }
        try {
            return new ReviewSettings(lookahead, games, seed, races.simulated());
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }

    /** Where the results are kept, and the threads. */
    KeptOptions kept() {
        return kept;
    }
}
