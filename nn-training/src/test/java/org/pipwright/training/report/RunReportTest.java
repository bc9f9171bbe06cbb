package org.pipwright.training.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The report as a file that stands alone. */
class RunReportTest {
    private static final List<String> TITLES = List.of(
            "points per game against pips",
            "loss (nats)",
            "share of games won as",
            "rolls per game, both sides",
            "equity of the side on roll at the start",
            "games per second");

    @TempDir
    Path folder;

    private static List<Metrics> lines(int count) {
        List<Metrics> lines = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            double fallen = Math.exp(-i / 10.0);
            lines.add(new Metrics(
                    100_000L * i,
                    60.0 * i,
                    1666 - 20 * fallen,
                    0.75 + fallen,
                    0.5 + fallen / 2,
                    0.7 * (1 - i / (double) count),
                    0.002 * (1 - i / (double) count),
                    52 + 30 * fallen,
                    0.25 + 0.1 * fallen,
                    0.01 + 0.03 * fallen,
                    0.07 - fallen,
                    new Evaluation(1000, 2.86 - 4 * fallen, 0.03)));
        }
        return lines;
    }

    private String report(int count) throws IOException {
        OpeningChoices openings = OpeningChoices.open(folder.resolve("openings.csv"), 0);
        for (int i = 1; i <= count; i++) {
            // Another choice now and then.
            long seed = i / 5;
            openings.add(
                    100_000L * i,
                    new Model(
                            InitialLayers.network(FeatureSet.CONTACT_1, List.of(8), seed),
                            InitialLayers.network(FeatureSet.RACE_1, List.of(8), seed),
                            Map.of()));
        }
        return RunReport.html(
                lines(count),
                openings,
                TrainingSettings.defaults().with(Setting.SEED, "77").with(Setting.GAMES, "4000000"));
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
    void standsAlone() throws IOException {
        String html = report(40).replaceAll("xmlns(:\\w+)?=(['\"])http://[^'\"]*\\2", "");
        for (String link : List.of("http:", "https:", "src=", "<link", "<script", "@import", "file:")) {
            assertFalse(html.contains(link), link);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 40})
    void sixChartsThatAreWellFormed(int count) throws IOException, ParserConfigurationException, SAXException {
        List<String> charts = found("<svg.*?</svg>", report(count));
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

    @Test
    void saysWhatItIsAbout() throws IOException {
        String html = report(40);
        assertTrue(html.contains("4,000,000 games in 40 min; against the baseline <i>pips</i> +2.787 ± 0.030 points"));
        assertTrue(html.contains("seed = 77") && html.contains("games = 4000000"));
        assertEquals(1, found("<table>", html).size());
        assertTrue(html.contains("<th>6-5</th>") && html.contains("<th>4,000,000</th>"));
    }
}
