package org.pipwright.training.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.pipwright.training.report.Chart.Curve;
import org.pipwright.training.report.Chart.Point;
import org.pipwright.training.settings.TrainingSettings;

/** Makes the report of a run of self-play. */
public final class RunReports {
    private RunReports() {}

    /**
     * Makes the report.
     *
     * @param lines the figures, oldest first, at least one
     * @param openings the opening choices
     * @param settings the settings
     * @return the report
     */
    public static RunReport of(List<Metrics> lines, OpeningChoices openings, TrainingSettings settings) {
        Metrics last = lines.get(lines.size() - 1);
        RunReport.Summary summary = new RunReport.Summary(
                String.format(
                        Locale.ROOT,
                        "%,d games in %s; against the %s",
                        last.games(),
                        RunReport.duration(last.seconds()),
                        settings.evaluation().byNet() ? "net" : "baseline"),
                settings.evaluation().rival(),
                String.format(
                        Locale.ROOT,
                        "%+.3f ± %.3f points per game (%,d paired games%s). %s",
                        last.evaluation().points(),
                        last.evaluation().error(),
                        last.evaluation().games(),
                        settings.evaluation().byNet() ? ", the luck of the rolls taken off" : "",
                        trend(lines).sentence("games")));
        // Reduced games have no openings that anyone knows.
        Optional<OpeningTable> plays =
                settings.games().checkers() == 15 ? Optional.of(openings.table()) : Optional.empty();
        return new RunReport(summary, charts(lines, settings.evaluation().rival()), plays, settings.toText());
    }

    private static Trend trend(List<Metrics> lines) {
        return Trend.of(lines.stream()
                .map(line -> new Trend.Stand(
                        line.games(),
                        line.evaluation().points(),
                        line.evaluation().error()))
                .toList());
    }

    private static List<Chart> charts(List<Metrics> lines, String rival) {
        boolean millions = lines.get(lines.size() - 1).games() >= 1_000_000;
        double unit = millions ? 1e6 : 1e3;
        String label = millions ? "games (millions)" : "games (thousands)";
        return List.of(
                new Chart("points per game against " + rival, label, List.of(strength(unit, lines))),
                new Chart(
                        "loss (nats)",
                        label,
                        List.of(
                                curve("contact", unit, lines, Metrics::contactLoss),
                                curve("race", unit, lines, Metrics::raceLoss))),
                new Chart(
                        "share of games won as",
                        label,
                        List.of(
                                curve("gammon", unit, lines, Metrics::gammons),
                                curve("backgammon", unit, lines, Metrics::backgammons))),
                new Chart("rolls per game, both sides", label, List.of(curve("", unit, lines, Metrics::turns))),
                new Chart(
                        "equity of the side on roll at the start",
                        label,
                        List.of(curve("", unit, lines, Metrics::startEquity))),
                new Chart("games per second", label, List.of(curve("", unit, lines, Metrics::gamesPerSecond))));
    }

    private static Curve strength(double unit, List<Metrics> lines) {
        return new Curve(
                "",
                lines.stream()
                        .map(line -> new Point(
                                line.games() / unit,
                                line.evaluation().points(),
                                line.evaluation().error()))
                        .toList());
    }

    private static Curve curve(String name, double unit, List<Metrics> lines, ToDoubleFunction<Metrics> value) {
        return new Curve(
                name,
                lines.stream()
                        .map(line -> new Point(line.games() / unit, value.applyAsDouble(line)))
                        .toList());
    }
}
