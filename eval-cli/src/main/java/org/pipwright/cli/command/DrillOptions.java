package org.pipwright.cli.command;

import java.util.Arrays;
import java.util.Iterator;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.Sentences;
import org.pipwright.engine.drill.Clarity;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.drill.Theme;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which exercises are wanted. */
final class DrillOptions {
    /** Most exercises of a drill. */
    static final int MAX = 200;

    private static final int A_PAGE = 6;

    private static final double DEFAULT_COST = 0.08;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "THEME",
            completionCandidates = Themes.class,
            description = "opening, hitting, priming, escaping, bearing-in, bearing-off; or, about the cube,"
                    + " race-doubles, takes-and-passes, match-scores.")
    private String theme;

    @Option(
            names = "--count",
            paramLabel = "N",
            description = "How many positions, 1 to " + MAX + ". Default: 6, a page.")
    private Integer count;

    @Option(
            names = "--cost",
            paramLabel = "POINTS",
            description = "What the mistake gives away at least. Default: 0.08.")
    private Double cost;

    @Option(
            names = "--margin",
            paramLabel = "POINTS",
            description = "By how much the best choice is better than any other, at least. Default: half of --cost.")
    private Double margin;

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
            description =
                    "Future rolls that the judging net averages over, 0 to " + Clarity.MAX_LOOKAHEAD + ". Default: 2.")
    private int lookahead;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description =
                    "Seed of the games. Default: 1. The same seed gives the same sheet, with any number of threads.")
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

    /** For games of the drill's own. */
    DrillSettings settings() {
        Theme about = theme().orElseThrow(() -> new UserError("no theme given: name one, or take mistakes from records"
                + " with --from FILE, or give your own with --positions FILE"));
        requireWithin("--most-games", mostGames, 1, 100_000_000);
        return new DrillSettings(about, count(), seed, clarity(DEFAULT_COST), apart(), mostGames, Sentences.ALL);
    }

    /** For mistakes of records, of a grade or worse if one is given. */
    SelectionSettings mistakes(Optional<Grade> grade) {
        if (grade.isPresent() && cost != null) {
            throw new UserError("--grade and --cost both say how large a mistake must be: give one of them");
        }
        Clarity clarity = clarity(grade.map(Grade::from).orElse(DEFAULT_COST));
        return new SelectionSettings(theme(), count(), clarity, true, apart());
    }

    /** For positions of a file. */
    SelectionSettings all(int positions) {
        requireWithin("--lookahead", lookahead, 0, Clarity.MAX_LOOKAHEAD);
        return SelectionSettings.all(positions, lookahead, races.simulated());
    }

    /** Positions of a file have themes of their own. */
    void refuseTheme() {
        if (theme != null) {
            throw new UserError("'" + Excerpt.of(theme)
                    + "' does nothing with --positions, which asks about all positions of a file: leave it out");
        }
    }

    boolean simulateRaces() {
        return races.simulated();
    }

    private int count() {
        int wanted = count == null ? A_PAGE : count;
        requireWithin("--count", wanted, 1, MAX);
        return wanted;
    }

    private int apart() {
        requireWithin("--apart", apart, 1, 30);
        return apart;
    }

    private Clarity clarity(double usualCost) {
        requireWithin("--lookahead", lookahead, 0, Clarity.MAX_LOOKAHEAD);
        double least = cost == null ? usualCost : cost;
        requirePoints("--cost", least);
        double between = margin == null ? least / 2 : margin;
        requirePoints("--margin", between);
        return new Clarity(least, between, lookahead, races.simulated());
    }

    /** What the exercises are to be about; empty if that was not asked for. */
    Optional<Theme> theme() {
        if (theme == null) {
            return Optional.empty();
        }
        return Optional.of(Theme.named(theme)
                .orElseThrow(() -> new UserError("no theme '" + Excerpt.of(theme) + "': use "
                        + Arrays.stream(Theme.values()).map(Theme::word).collect(Collectors.joining(", ")))));
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
