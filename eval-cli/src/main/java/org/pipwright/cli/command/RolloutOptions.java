package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What decides a rollout. */
final class RolloutOptions {
    @Option(
            names = "--trials",
            paramLabel = "N",
            description = "Games for each candidate, rounded up to rounds of 36. Default: 1296. With --resume it"
                    + " may be another number than before, and so may --until-sure.")
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

    @Mixin
    private KeptOptions kept;

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

    /** Those who play elsewhere; null if this machine's threads play. */
    Workforce workforce(Console console) {
        return cluster.openIfGiven(console);
    }

    EndgameTables tables(Console console) {
        return tables.standard(kept.threads(), console);
    }

    /** Where the results are kept, and the threads. */
    KeptOptions kept() {
        return kept;
    }
}
