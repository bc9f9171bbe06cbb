package org.pipwright.training.report;

import java.util.function.Supplier;

/** The page that the report of any run is: one HTML file that needs nothing else. */
public final class ReportPage {
    private static final String STYLE = """
            body{font:15px/1.5 system-ui,sans-serif;color:#2b323b;max-width:62em;margin:1.5em auto;padding:0 1em}
            h1{font-size:1.5em}h2{font-size:1.15em;margin-top:1.6em}
            .charts{display:flex;flex-wrap:wrap;gap:1em}.charts svg{flex:1 1 400px;max-width:460px;height:auto}
            .wide{overflow-x:auto}table{border-collapse:collapse;font-size:.85em}
            th,td{padding:.25em .6em;text-align:left;border-bottom:1px solid #ddd;white-space:nowrap}
            td.same{color:#888}pre{background:#f5f4f0;padding:1em;overflow-x:auto;font-size:.8em}
            @media print{body{margin:0;max-width:none;font-size:11px}.charts svg{max-width:48%}}
            """;

    private ReportPage() {}

    /**
     * Makes the page.
     *
     * @param summary the run in a sentence, as HTML
     * @param charts draws the learning curves, as SVG elements
     * @param more further sections, as HTML; empty if there are none
     * @param settings the settings as a file has them
     * @return an HTML page
     */
    public static String html(String summary, Supplier<String> charts, String more, String settings) {
        return "<!doctype html>\n<html lang=en><head><meta charset=utf-8>\n"
                + "<meta name=viewport content='width=device-width,initial-scale=1'>\n"
                + "<title>Training run</title>\n<style>\n"
                + STYLE
                + "</style></head><body>\n<h1>Training run</h1>\n<p>"
                + summary
                + "</p>\n<h2>Learning curves</h2>\n<div class=charts>\n"
                + chartsOrWhyNot(charts)
                + "</div>\n"
                + more
                + "<h2>Settings</h2>\n<pre>"
                + settings.replace("&", "&amp;").replace("<", "&lt;")
                + "</pre>\n</body></html>\n";
    }

    /** A Java without fonts cannot draw, and says so with many kinds of errors; that must not end a run of hours. */
    private static String chartsOrWhyNot(Supplier<String> charts) {
        try {
            return charts.get();
        } catch (RuntimeException | Error e) {
            return "<p>No charts: this Java has no fonts to label them with. The figures are in metrics.csv.</p>";
        }
    }

    /**
     * A length of time in words.
     *
     * @param seconds the time
     * @return for instance {@code 50 s}, {@code 12 min} or {@code 3 h 5 min}
     */
    public static String duration(double seconds) {
        if (seconds < 60) {
            return Math.round(seconds) + " s";
        }
        long minutes = Math.round(seconds / 60);
        return minutes < 60 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }
}
