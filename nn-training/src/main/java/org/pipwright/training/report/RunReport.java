package org.pipwright.training.report;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.pipwright.training.report.Curves.Curve;
import org.pipwright.training.settings.TrainingSettings;

/** A run for people: one HTML file that needs nothing else. */
public final class RunReport {
    private static final int MAX_COLUMNS = 8;

    private RunReport() {}

    /**
     * Makes the report.
     *
     * @param lines the figures, oldest first, at least one
     * @param openings the opening choices
     * @param settings the settings
     * @return an HTML page
     */
    public static String html(List<Metrics> lines, OpeningChoices openings, TrainingSettings settings) {
        Metrics last = lines.get(lines.size() - 1);
        String summary = String.format(
                Locale.ROOT,
                "%,d games in %s; against the baseline <i>pips</i> %+.3f ± %.3f points per game (%,d paired games).",
                last.games(),
                ReportPage.duration(last.seconds()),
                last.evaluation().points(),
                last.evaluation().error(),
                last.evaluation().games());
        String plays = "";
        // Reduced games have no openings that anyone knows.
        if (settings.games().checkers() == 15) {
            plays = "<h2>Opening plays</h2>\n<p>Choice for each opening roll after so many games;"
                    + " unchanged ones are grey.</p>\n<div class=wide>"
                    + openings.toHtml(MAX_COLUMNS)
                    + "</div>\n";
        }
        return ReportPage.html(summary, () -> charts(lines), plays, settings.toText());
    }

    private static String charts(List<Metrics> lines) {
        double millions = lines.get(lines.size() - 1).games() >= 1_000_000 ? 1e6 : 1e3;
        String unit = millions == 1e6 ? "games (millions)" : "games (thousands)";
        double[] x = lines.stream().mapToDouble(m -> m.games() / millions).toArray();
        return String.join(
                "\n",
                Curves.svg("points per game against pips", unit, curve("", x, lines, m -> m.evaluation()
                        .points())),
                Curves.svg(
                        "loss (nats)",
                        unit,
                        curve("contact", x, lines, Metrics::contactLoss),
                        curve("race", x, lines, Metrics::raceLoss)),
                Curves.svg(
                        "share of games won as",
                        unit,
                        curve("gammon", x, lines, Metrics::gammons),
                        curve("backgammon", x, lines, Metrics::backgammons)),
                Curves.svg("rolls per game, both sides", unit, curve("", x, lines, Metrics::turns)),
                Curves.svg("equity of the side on roll at the start", unit, curve("", x, lines, Metrics::startEquity)),
                Curves.svg("games per second", unit, curve("", x, lines, Metrics::gamesPerSecond)));
    }

    private static Curve curve(String name, double[] x, List<Metrics> lines, ToDoubleFunction<Metrics> value) {
        return new Curve(name, x, lines.stream().mapToDouble(value).toArray());
    }
}
