package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.train.RunPage;
import org.pipwright.training.report.Chart;
import org.pipwright.training.report.OpeningTable;
import org.pipwright.training.report.RunReport;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The report as a file that stands alone. */
class RunPageTest {
    private static final List<String> TITLES = List.of(
            "points per game against fifth",
            "loss (nats)",
            "share of games won as",
            "rolls per game, both sides",
            "equity of the side on roll at the start",
            "games per second");

    private static RunReport report(int count) {
        List<Chart> charts = TITLES.stream()
                .map(title -> new Chart(
                        title,
                        "games (thousands)",
                        IntStream.range(0, title.startsWith("loss") ? 2 : 1)
                                .mapToObj(c -> new Chart.Curve("curve " + c, points(count)))
                                .toList()))
                .toList();
        OpeningTable openings = new OpeningTable(
                List.of(1000L, 4_000_000L),
                List.of(new OpeningTable.Row(
                        "6-5",
                        List.of(new OpeningTable.Choice("24/18 13/8", false), new OpeningTable.Choice("24/13", false)),
                        "24/13",
                        true)));
        return new RunReport(
                new RunReport.Summary("1 game <b>", "<pips>", "+2.787 ± 0.030"),
                charts,
                Optional.of(openings),
                "seed = 77\nname = \"<script>\"\n");
    }

    private static List<Chart.Point> points(int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(i -> new Chart.Point(i, Math.exp(-i / 10.0)))
                .toList();
    }

    private static String page(int count) {
        return new RunPage().of(report(count)).orElseThrow();
    }

    private static List<String> found(String pattern, String text) {
        Matcher matcher = Pattern.compile(pattern, Pattern.DOTALL).matcher(text);
        List<String> found = new ArrayList<>();
        while (matcher.find()) {
            found.add(matcher.group());
        }
        return found;
    }

    @Test
    void standsAlone() {
        String html = page(40).replaceAll("xmlns(:\\w+)?=(['\"])http://[^'\"]*\\2", "");
        for (String link : List.of("http:", "https:", "src=", "<link", "<script>", "@import", "file:")) {
            assertFalse(html.contains(link), link);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 40})
    void sixChartsThatAreWellFormed(int count) throws IOException, ParserConfigurationException, SAXException {
        List<String> charts = found("<svg.*?</svg>", page(count));
        assertEquals(TITLES.size(), charts.size());
        Set<String> ids = new HashSet<>();
        for (int c = 0; c < charts.size(); c++) {
            String chart = charts.get(c);
            DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(chart)));
            assertTrue(chart.contains("viewBox="), "can be scaled");
            assertTrue(chart.contains(">" + TITLES.get(c) + "<"), TITLES.get(c));
            for (String id : found(" id=['\"][^'\"]*['\"]", chart)) {
                assertTrue(ids.add(id), "two things named" + id);
            }
        }
    }

    /** Nor errors of a single pair of games. */
    @Test
    void whatWasNotMeasuredIsNotDrawn() {
        List<Chart.Point> points = List.of(
                new Chart.Point(1, Double.NaN, Double.NaN),
                new Chart.Point(2, 0.1, Double.NaN),
                new Chart.Point(3, 0.2, 0.05));
        RunReport full = report(3);
        Chart chart = new Chart("points", "minutes", List.of(new Chart.Curve("", points)));
        RunReport some = new RunReport(full.summary(), List.of(chart), Optional.empty(), full.settings());
        String page = new RunPage().of(some).orElseThrow();
        assertTrue(page.contains("<svg") && !page.contains("NaN"));
    }

    @Test
    void saysWhatItIsAbout() {
        String html = page(40);
        assertTrue(html.contains("<p>1 game &lt;b&gt; <i>&lt;pips&gt;</i> +2.787 ± 0.030</p>"), html);
        assertTrue(html.contains("seed = 77\nname = \"&lt;script&gt;\""), html);
        assertEquals(1, found("<table>", html).size());
        assertTrue(html.contains("<th>6-5</th>") && html.contains("<th>4,000,000</th>"));
    }

    @Test
    void plainRunsHaveNoTable() {
        RunReport full = report(3);
        RunReport reduced = new RunReport(full.summary(), full.charts(), Optional.empty(), full.settings());
        assertFalse(new RunPage().of(reduced).orElseThrow().contains("<table"));
    }
}
