package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** {@code rank --roll all}. */
class RollSheetTest {
    private static Run rank(String... args) {
        List<String> all = new ArrayList<>(List.of("rank"));
        all.addAll(List.of(args));
        all.addAll(List.of("--net", TestNet.path()));
        return Run.of(all.toArray(String[]::new));
    }

    @Test
    void everyRollHasTheRankersBestPlay() {
        Position position = Position.start();
        List<String> lines = rank("start", "--roll", "all").out().lines().toList();
        assertEquals("roll", lines.get(3).strip().split("\\s+")[0]);
        PlayRanker ranker = new PlayRanker(new NetworkEvaluator(TestNet.MODEL));
        double sum = 0;
        for (int i = 0; i < Roll.COUNT; i++) {
            Roll roll = Roll.all().get(i);
            List<PlayVerdict> plays = ranker.rank(position, roll);
            String[] cells = lines.get(4 + i).strip().split("\\s{2,}");
            assertEquals(
                    List.of(
                            roll.toString(),
                            plays.get(0).play().toString(),
                            String.format(Locale.ROOT, "%+.4f", plays.get(0).equity()),
                            plays.get(1).play().toString()),
                    List.of(cells).subList(0, 4));
            assertEquals(plays.get(1).equity() - plays.get(0).equity(), Double.parseDouble(cells[4]), 1e-4);
            sum += roll.ways() * plays.get(0).equity();
        }
        assertEquals(String.format(Locale.ROOT, "mean of the 36 throws: %+.4f", sum / 36), lines.get(26));
        assertEquals(27, lines.size());
    }

    @Test
    void aPlayBeforeIsPlayedFirst() {
        Position before = Position.start();
        Position after = PlayText.parse("8/5 6/5", before, Roll.parse("3-1")).next();
        String replies =
                rank("start", "--play-on", "3-1: 8/5 6/5", "--roll", "all").out();
        assertEquals(rank(after.toString(), "--roll", "all").out(), replies);
    }

    @Test
    void aMatchIsInPerCentAndARollWithoutAPlayHasNoNext() {
        String text = rank("2@6 3@8 9@13 1@bar / 2@1 2@2 2@3 2@4 2@5 2@6 3@7", "--roll", "all", "--away", "3,5")
                .out();
        assertTrue(text.contains("match, %"), text);
        assertEquals(
                21,
                text.lines().filter(line -> line.matches("\\d-\\d .*no play.*")).count(),
                text);
    }

    @ParameterizedTest
    @CsvSource({"--explain", "--top=2", "--rollout=36", "--seconds=1", "--plays=8/5 6/5"})
    void whatIsForOneRollIsRefused(String option) {
        Run run = rank("start", "--roll", "all", option);
        assertEquals(2, run.code());
        assertTrue(run.err().contains("is for one roll: leave it out with --roll all"), run.err());
        assertEquals("", run.out());
    }

    @Test
    void aRollBehindThePositionIsRefused() {
        Run run = rank("start", "3-1", "--roll", "all");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("leave one of them out"), run.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--away 3,5", "--cube 1"})
    void jsonAndCsvSayWhatTheTableSays(String stakes) throws IOException {
        List<String> options = new ArrayList<>(List.of("start", "--play-on", "3-1:  8/5 6/5", "--roll", "all"));
        options.addAll(stakes.isEmpty() ? List.of() : List.of(stakes.split(" ")));
        String table = rank(options.toArray(String[]::new)).out();
        options.add("--json");
        String json = rank(options.toArray(String[]::new)).out();
        assertEquals(List.of(), Schemas.faults("rolls", json));
        JsonNode report = new ObjectMapper().readTree(json);
        assertEquals("3-1: 8/5 6/5", report.get("before").asText());
        options.set(options.size() - 1, "--format=csv");
        List<String> rows = rank(options.toArray(String[]::new)).out().lines().toList();
        assertEquals(1 + 2 * Roll.COUNT, rows.size());
        for (int i = 0; i < Roll.COUNT; i++) {
            JsonNode roll = report.get("rolls").get(i);
            List<String> told = new ArrayList<>(List.of(roll.get("roll").asText()));
            for (int k = 0; k < 2; k++) {
                JsonNode play = roll.get("plays").get(k);
                told.add(play.get("playText").asText());
                String[] cells = rows.get(1 + 2 * i + k).split(",", -1);
                assertEquals(
                        List.of(roll.get("roll").asText(), play.get("playText").asText()), List.of(cells[2], cells[4]));
                String value = stakes.isEmpty() ? "equity" : "cubefulValue";
                assertEquals(play.get(value).asDouble(), Double.parseDouble(cells[6]), 1e-9);
            }
            String row = told.get(0) + " +" + Pattern.quote(told.get(1)) + " .* " + Pattern.quote(told.get(2)) + " .*";
            assertTrue(table.lines().anyMatch(line -> line.matches(row)), row + " in\n" + table);
        }
        double mean = report.get("mean").asDouble();
        String end = stakes.startsWith("--away")
                ? String.format(Locale.ROOT, "%.2f %%", 100 * mean)
                : String.format(Locale.ROOT, "%+.4f", mean);
        assertTrue(table.contains("mean of the 36 throws: " + end + "\n"), end + " in\n" + table);
    }

    @Test
    void theSheetHasEachRollInItsTableAndOnABoard(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("replies.html");
        Run run = rank("start", "--play-on", "3-1: 8/5 6/5", "--roll", "all", "--sheet", file.toString());
        assertEquals("wrote " + file + "\n", run.err());
        String html = Files.readString(file);
        assertFalse(Pattern.compile("(?i)<script|<link|@import|url\\(|src=")
                .matcher(html)
                .find());
        assertTrue(html.contains("<h1>Replies to 3-1: 8/5 6/5</h1>"), html.substring(0, 9000));
        assertEquals(1 + Roll.COUNT, html.split("<svg", -1).length - 1);
        List<String> lines = run.out().lines().toList();
        for (int i = 0; i < Roll.COUNT; i++) {
            String[] cells = lines.get(4 + i).strip().split("\\s{2,}");
            String row = "<tr><th scope=\"row\">" + cells[0] + "</th><td>" + cells[1] + "</td><td>" + cells[2]
                    + "</td><td>" + cells[3] + "</td><td>" + cells[4] + "</td>";
            assertTrue(html.contains(row), row);
        }
    }

    @Test
    void theSheetPrintsOnTwoPages(@TempDir Path folder) {
        Path file = folder.resolve("replies.html");
        rank("start", "--play-on", "3-1: 8/5 6/5", "--roll", "all", "--cube", "1", "--sheet", file.toString());
        try (Browser browser = Browser.start()) {
            Page page = browser.chromium().newPage();
            page.navigate(file.toUri().toString());
            String pdf =
                    new String(page.pdf(new Page.PdfOptions().setPreferCSSPageSize(true)), StandardCharsets.ISO_8859_1);
            assertEquals(2, pdf.split("/Type /Page\\b(?!s)", -1).length - 1);
        }
    }

    @Test
    void aRollWithoutAPlayHasNoBoard(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("rolls.html");
        rank("2@6 3@8 9@13 1@bar / 2@1 2@2 2@3 2@4 2@5 2@6 3@7", "--roll", "all", "--sheet", file.toString());
        assertEquals(1, Files.readString(file).split("<svg", -1).length - 1);
    }

    @Test
    void aSheetOfOneRollIsRefused(@TempDir Path folder) {
        Path file = folder.resolve("replies.html");
        Run run = rank("start", "3-1", "--sheet", file.toString());
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains("--sheet is for the 21 rolls"), run.err());
        assertFalse(Files.exists(file));
    }
}
