package org.pipwright.cli.command;

import java.nio.file.Path;
import java.util.List;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.rollout.RolloutFile;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What decides a rollout. */
final class RolloutOptions {
    @Option(
            names = "--trials",
            paramLabel = "N",
            description = "Games for each candidate, rounded up to rounds of 36. Default: 1296.")
    private int trials = RolloutSettings.DEFAULT.trials();

    @Option(
            names = "--until-sure",
            paramLabel = "E",
            description = "Stop as soon as the best is ahead of all others as surely as a single look would show at E"
                    + " standard errors (3, say). Since the standings are looked at after each round, more than E are"
                    + " asked for: the boundary of a confidence sequence, which holds at all looks together. Cube actions:"
                    + " once each choice is clear like that, or known to lie within 0.01 points of indifference.")
    private double sure;

    @Option(names = "--seed", paramLabel = "N", description = "Seed of the dice. Default: 1.")
    private long seed = RolloutSettings.DEFAULT.seed();

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            description = "Of both sides' checker play: future rolls averaged over, 0 (the default) to 6.")
    private int lookahead;

    @Option(
            names = "--truncate",
            paramLabel = "N",
            description =
                    "Truncate each game after N rolls and take the net's value there. Default: play on to the end,"
                            + " or to where the tables know the rest.")
    private int truncation;

    @Option(names = "--no-luck", description = "No variance reduction: leave luck in the results.")
    private boolean withLuck;

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
            description =
                    "Continue from such a file and keep it up to date: the results are those of a rollout that was"
                            + " never stopped. Everything but --trials and --until-sure must be as it was.")
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

    private RolloutFile kept = RolloutFile.NONE;

    @Mixin
    private TablesOption tables;

    @Mixin
    private ClusterOption cluster;

    RolloutSettings settings() {
        try {
            return new RolloutSettings(trials, seed, lookahead, truncation, !withLuck, sure, LookaheadSettings.DEFAULT);
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }

    int threads() {
        return Threads.checked(threads);
    }

    /** Those who play elsewhere; null if this machine's threads play. */
    Workforce workforce(Console console) {
        return cluster.given() ? cluster.open(console) : null;
    }

    EndgameTables tables(Console console) {
        return tables.standard(threads(), console);
    }

    /** Where the numbers are kept; {@code judge} has what judges, one thing a line. */
    RolloutFile file(List<String> judge) {
        if (save != null && resume != null) {
            throw new UserError("--save begins a file anew and --resume goes on with one: give one of them");
        }
        if (resume == null && save == null) {
            return RolloutFile.NONE;
        }
        kept = resume == null ? RolloutFile.fresh(save, judge) : RolloutFile.resumed(resume, judge);
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
