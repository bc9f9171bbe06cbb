package org.pipwright.cli.command;

import java.util.Locale;
import java.util.Optional;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.cli.duel.DeviceDuelJob;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.cli.duel.Progress;
import org.pipwright.cli.report.DuelReport;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.engine.statistics.SequentialTest;
import org.pipwright.engine.text.Excerpt;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Two players to what they score against each other. */
@Command(
        name = "duel",
        customSynopsis = "pipwright duel A B [options]",
        header = "Play two players against each other.",
        description = {
            "10,000 cubeless games, every dice sequence twice with sides swapped; points per game of A, with the standard"
                    + " error of their mean over pairs. With --money or --match the cube is in play: nets judge it, and move the"
                    + " checkers, for points or for the match, by Pipwright's cube model at their own chances. An interrupt"
                    + " (Ctrl-C) ends it with what is known so far.",
            "",
            "With --device cuda an NVIDIA card answers for nets (train --device cuda says what it needs), this machine's"
                    + " threads for all other players, many games at once, without lookahead. The dice are the"
                    + " same; the report says how many decisions differ from the processor's, which rounds otherwise."
        },
        footer = {
            "Examples:",
            "  pipwright duel new.safetensors builder",
            "  pipwright duel new.safetensors old.safetensors --until-sure",
            "  pipwright duel new.safetensors new.safetensors --lookahead 1,0 --games 2000",
            "  pipwright duel new.safetensors old.safetensors --money --luck --games 1000",
            "  pipwright duel new.safetensors old.safetensors --match 7 --games 2000",
            "  pipwright duel standard swift --device cuda --games 200000"
        })
public final class DuelCommand extends CliCommand {
    private static final long GAMES = 10_000;

    private static final long GAMES_UNTIL_SURE = 1_000_000;

    @Parameters(
            index = "0",
            paramLabel = "A",
            description = "A net by name or by the path of its file; or one that never changes: random, pips, racer,"
                    + " hitter, builder, waiter.")
    private String a;

    @Parameters(index = "1", paramLabel = "B", description = "The other player, named in the same way.")
    private String b;

    @Mixin
    private ContestOptions contest;

    @Mixin
    private GamesOptions games;

    @Option(
            names = "--lookahead",
            paramLabel = "N[,M]",
            defaultValue = "0",
            description = "Future rolls that nets average over: of both, or of A and of B. Default: 0.")
    private String lookahead;

    @Option(
            names = "--until-sure",
            description =
                    "Stop as soon as Wald's sequential test of the pairs is sure; --games is then the most games to"
                            + " play, by default a million.")
    private boolean untilSure;

    @Option(
            names = "--between",
            paramLabel = "LOW,HIGH",
            converter = TwoNumbers.Converter.class,
            description =
                    "Points per game of A that --until-sure decides between, default 0,0.02; with --match the share of"
                            + " matches won, default 0.5,0.51.")
    private TwoNumbers between;

    @Option(
            names = "--error-rates",
            paramLabel = "P,Q",
            converter = TwoNumbers.Converter.class,
            description =
                    "Chances that --until-sure takes HIGH where LOW is true, and LOW where HIGH is. Default: 0.05,0.05.")
    private TwoNumbers errorRates;

    @Option(
            names = "--device",
            paramLabel = "NAME",
            completionCandidates = Devices.Playing.class,
            description = "What plays: cpu, the processor (default), or cuda, an NVIDIA card.")
    private String device = Devices.CPU;

    @Mixin
    private ClusterOption cluster;

    @Option(names = "--json", description = "Print JSON, in the form that duel.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public DuelCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Devices.require(device, Devices.PLAYING);
        int threads = games.threads();
        Contest played = contest.contest();
        long pairs = games.pairs(untilSure ? GAMES_UNTIL_SURE : GAMES);
        DuelSettings settings = new DuelSettings(played, pairs, games.seed(), games.luck(), sequentialTest(played));
        int[] depths = depths();
        if (device.equals(Devices.CUDA)) {
            if (cluster.given()) {
                throw new UserError("--device " + device + " plays on this machine's card: leave it out, or --cluster");
            }
            requireStatic(played.withCube(), depths);
        }
        ModelCatalog catalog = ModelCatalog.shipped();
        Contestant one = Contestant.read(a, catalog, depths[0]);
        Contestant other = Contestant.read(b, catalog, depths[1]);
        if (device.equals(Devices.CUDA)) {
            new DeviceDuelJob(console(), device)
                    .run(
                            one,
                            other,
                            settings,
                            threads,
                            // Types of the trainer in the signature of a lambda would be loaded with this class.
                            (tally, done) -> print(new DuelReport(one, other, settings, tally, plusMinus(), done)));
        } else {
            play(one, other, settings, threads);
        }
        return 0;
    }

    private void play(Contestant one, Contestant other, DuelSettings settings, int threads) {
        boolean netless = one.net().isEmpty() && other.net().isEmpty();
        if (settings.luck() && netless) {
            throw new UserError("--luck needs a net to value it: neither " + a + " nor " + b + " is one");
        }
        Progress progress = Progress.of(2 * settings.pairs(), console().err());
        Duel duel = duel(one, other, settings, progress);
        try (Workforce workforce = cluster.openIfGiven(console())) {
            Interruption.during(
                    () -> {
                        Tally tally =
                                progress.during(() -> workforce == null ? duel.run(threads) : duel.run(workforce));
                        print(new DuelReport(one, other, settings, tally, plusMinus(), Optional.empty()));
                    },
                    duel::stop);
        }
    }

    private Duel duel(Contestant one, Contestant other, DuelSettings settings, Progress progress) {
        try {
            return new Duel(
                    one.entrant(),
                    other.entrant(),
                    settings,
                    soFar -> progress.reached(2 * soFar.pairs(), note(soFar.best())));
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }

    /** A card plays without lookahead, cube and measured luck. */
    private void requireStatic(boolean withCube, int[] depths) {
        if (withCube || games.luck() || depths[0] != 0 || depths[1] != 0) {
            throw new UserError("--device " + device + " plays without the cube, without lookahead and without --luck:"
                    + " leave those options out, or --device");
        }
    }

    private Optional<SequentialTest> sequentialTest(Contest played) {
        if (!untilSure && (between != null || errorRates != null)) {
            throw new UserError((between != null ? "--between" : "--error-rates") + " needs --until-sure");
        }
        return untilSure
                ? Optional.of(test(
                        played instanceof Contest.Match ? SequentialTest.usualOfMatches() : SequentialTest.usual()))
                : Optional.empty();
    }

    private SequentialTest test(SequentialTest usual) {
        TwoNumbers means = between == null ? new TwoNumbers(usual.low(), usual.high()) : between;
        TwoNumbers rates = errorRates == null ? new TwoNumbers(usual.alpha(), usual.beta()) : errorRates;
        try {
            return new SequentialTest(means.first(), means.second(), rates.first(), rates.second());
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }

    private int[] depths() {
        if (!lookahead.matches("\\d{1,3}(,\\d{1,3})?")) {
            throw new UserError("--lookahead is '" + Excerpt.of(lookahead) + "': give one number, or two as in 1,0");
        }
        String[] parts = lookahead.split(",");
        return new int[] {Integer.parseInt(parts[0]), Integer.parseInt(parts[parts.length - 1])};
    }

    private String plusMinus() {
        return console().unicode() ? "\u00b1" : "+/-";
    }

    private String note(RunningMean best) {
        return String.format(Locale.ROOT, "%+.3f %s %.3f", best.mean(), plusMinus(), best.standardError());
    }

    private void print(DuelReport report) {
        if (json) {
            report.writeJson(out());
        } else {
            report.writeText(out());
        }
        out().flush();
    }
}
