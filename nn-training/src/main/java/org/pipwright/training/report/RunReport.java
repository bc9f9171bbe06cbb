package org.pipwright.training.report;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.pipwright.training.report.Curves.Curve;
import org.pipwright.training.run.Metrics;
import org.pipwright.training.settings.TrainingSettings;

/** A run for people: one HTML file that needs nothing else. */
public final class RunReport {
    private static final int MOST_COLUMNS = 8;

    private static final String STYLE = """
            body{font:15px/1.5 system-ui,sans-serif;color:#2b323b;max-width:62em;margin:1.5em auto;padding:0 1em}
            h1{font-size:1.5em}h2{font-size:1.15em;margin-top:1.6em}
            .charts{display:flex;flex-wrap:wrap;gap:1em}.charts svg{flex:1 1 400px;max-width:460px;height:auto}
            .wide{overflow-x:auto}table{border-collapse:collapse;font-size:.85em}
            th,td{padding:.25em .6em;text-align:left;border-bottom:1px solid #ddd;white-space:nowrap}
            td.same{color:#888}pre{background:#f5f4f0;padding:1em;overflow-x:auto;font-size:.8em}
            @media print{body{margin:0;max-width:none;font-size:11px}.charts svg{max-width:48%}}
            """;

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
        StringBuilder html = new StringBuilder("<!doctype html>\n<html lang=en><head><meta charset=utf-8>\n")
                .append("<meta name=viewport content='width=device-width,initial-scale=1'>\n")
                .append("<title>Training run</title>\n<style>\n")
                .append(STYLE)
                .append("</style></head><body>\n<h1>Training run</h1>\n");
        html.append(String.format(
                Locale.ROOT,
                "<p>%,d games in %s; against the baseline <i>pips</i> %+.3f ± %.3f points per game (%,d paired games).</p>%n",
                last.games(),
                duration(last.seconds()),
                last.evaluation().points(),
                last.evaluation().error(),
                last.evaluation().games()));
        html.append("<h2>Learning curves</h2>\n<div class=charts>\n")
                .append(chartsOrWhyNot(lines))
                .append("</div>\n");
        // Reduced games have no openings that anyone knows.
        if (settings.games().checkers() == 15) {
            html.append("<h2>Opening plays</h2>\n<p>Choice for each opening roll after so many games;"
                            + " unchanged ones are grey.</p>\n<div class=wide>")
                    .append(openings.toHtml(MOST_COLUMNS))
                    .append("</div>\n");
        }
        html.append("<h2>Settings</h2>\n<pre>")
                .append(settings.toText().replace("&", "&amp;").replace("<", "&lt;"))
                .append("</pre>\n</body></html>\n");
        return html.toString();
    }

    /** A Java without fonts cannot draw, and says so with many kinds of errors; that must not end a run of hours. */
    private static String chartsOrWhyNot(List<Metrics> lines) {
        try {
            return charts(lines);
        } catch (RuntimeException | Error e) {
            return "<p>No charts: this Java has no fonts to label them with. The figures are in metrics.csv.</p>";
        }
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

    private static String duration(double seconds) {
        if (seconds < 60) {
            return Math.round(seconds) + " s";
        }
        long minutes = Math.round(seconds / 60);
        return minutes < 60 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }
}
