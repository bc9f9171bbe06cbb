package org.pipwright.cli.command;

import java.nio.file.Path;
import java.util.List;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.review.ReviewFile;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

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

    @Option(
            names = "--save",
            paramLabel = "FILE",
            converter = OutputFile.Work.class,
            description = "Keep the results so far in a file, to resume from.")
    private Path save;

    @Option(
            names = "--resume",
            paramLabel = "FILE",
            converter = OutputFile.Kept.class,
            description = "Continue from such a file and keep it up to date; record, net and settings must be as they"
                    + " were. The review is that of a run that was never stopped.")
    private Path resume;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads to use; answers do not depend on it. Default: one for each core.")
    private Integer threads;

    @Mixin
    private ForceOption force;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    private ReviewFile kept = ReviewFile.NONE;

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

    int threads() {
        return Threads.checked(threads);
    }

    /** What to do to go on after a stop; nothing if nothing is kept. */
    String howToGoOn() {
        Path file = save == null ? resume : save;
        if (file == null) {
            return "; --save FILE would have kept what was found";
        }
        return kept.problem().map(problem -> "; " + problem).orElse("") + "; --resume " + file + " goes on";
    }

    ReviewFile file(List<String> judge) {
        if (save != null && resume != null) {
            throw new UserError("--save begins a file anew and --resume goes on with one: give one of them");
        }
        if (resume == null && save == null) {
            return ReviewFile.NONE;
        }
        kept = resume == null ? ReviewFile.fresh(save, judge) : ReviewFile.resumed(resume, judge);
        kept.warning(line -> command.commandLine().getErr().println("pipwright: " + line));
        return kept;
    }

    /** Once all is printed: sees that it was kept too, if that was asked for. */
    void requireKept() {
        kept.problem().ifPresent(problem -> {
            throw new UserError(problem + ": what is printed is not in it, but what was kept before still is");
        });
    }
}
