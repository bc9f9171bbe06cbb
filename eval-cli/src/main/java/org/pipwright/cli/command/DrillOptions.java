package org.pipwright.cli.command;

import java.util.Arrays;
import java.util.Iterator;
import java.util.stream.Collectors;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.Theme;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which exercises are wanted. */
final class DrillOptions {
    private static final int MAX = 200;

    @Parameters(
            index = "0",
            paramLabel = "THEME",
            completionCandidates = Themes.class,
            description = "opening, hitting, priming, escaping, bearing-in, bearing-off; or, about the cube,"
                    + " race-doubles, takes-and-passes, match-scores.")
    private String theme;

    @Option(
            names = "--count",
            paramLabel = "N",
            defaultValue = "6",
            description = "How many positions, 1 to " + MAX + ". Default: 6, a page.")
    private int count;

    @Option(
            names = "--cost",
            paramLabel = "POINTS",
            defaultValue = "0.08",
            description = "What the weaker player's choice gives away at least. Default: 0.08.")
    private double cost;

    @Option(
            names = "--margin",
            paramLabel = "POINTS",
            defaultValue = "0.04",
            description = "By how much the best choice is better than any other, at least. Default: 0.04.")
    private double margin;

    @Option(
            names = "--apart",
            paramLabel = "N",
            defaultValue = "4",
            description = "Two positions are nearly equal, and only one of them is used, if fewer than N checkers stand"
                    + " elsewhere in the other. Default: 4.")
    private int apart;

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            defaultValue = "2",
            description = "Future rolls that the judging net averages over, 0 to " + DrillSettings.MAX_LOOKAHEAD
                    + ". Default: 2.")
    private int lookahead;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description =
                    "Seed of the games; default 1. The same seed gives the same sheet, with any number of threads.")
    private long seed;

    @Option(
            names = "--most-games",
            paramLabel = "N",
            defaultValue = "20000",
            description = "Give up after so many games. Default: 20000.")
    private int mostGames;

    @Mixin
    private RacesOption races;

    /** What a shell may offer. */
    static final class Themes implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(Theme.values()).map(Theme::word).iterator();
        }
    }

    DrillSettings settings() {
        requireWithin("--count", count, 1, MAX);
        requireWithin("--apart", apart, 1, 30);
        requireWithin("--lookahead", lookahead, 0, DrillSettings.MAX_LOOKAHEAD);
        requireWithin("--most-games", mostGames, 1, 100_000_000);
        requirePoints("--cost", cost);
        requirePoints("--margin", margin);
        return new DrillSettings(theme(), count, seed, cost, margin, lookahead, races.simulated(), apart, mostGames);
    }

    private Theme theme() {
        return Theme.named(theme)
                .orElseThrow(() -> new UserError("no theme '" + Excerpt.of(theme) + "': use "
                        + Arrays.stream(Theme.values()).map(Theme::word).collect(Collectors.joining(", "))));
    }

    private static void requireWithin(String option, int value, int least, int most) {
        if (value < least || value > most) {
            throw new UserError(option + " is " + value + ": use " + least + " to " + most);
        }
    }

    private static void requirePoints(String option, double value) {
        if (!(value > 0 && value <= 6)) {
            throw new UserError(option + " is " + value + ": use more than 0 and at most 6 points");
        }
    }
}
