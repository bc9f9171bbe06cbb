package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReviewCommandTest {
    private static final String MATCH = String.join(
            "\n",
            "pipwright record 1",
            "players: Ada <1>, Ben & Co",
            "match: 2",
            "event: \"Class\" <b>",
            "# a remark & more",
            "",
            "game",
            "Ada <1> 3-1: 8/5 6/5",
            "Ben & Co 6-2: 24/22 13/7  # runs <i>",
            "Ada <1> 4-4: 24/20(2) 13/9(2)",
            "Ben & Co doubles",
            "Ada <1> takes",
            "Ben & Co 5-3: 8/3 6/3",
            "Ada <1> resigns",
            "");

    private static final String MONEY = String.join(
            "\n",
            "pipwright record 1",
            "players: Ada, Ben",
            "money: jacoby, beavers",
            "",
            "game",
            "Ada 3-1: 8/5 6/5",
            "Ben 6-2: 24/18 13/11",
            "Ada doubles",
            "Ben beavers",
            "Ada 4-1: 24/23 13/9",
            "Ben resigns gammon",
            "game",
            "Ben 4-2: 8/4 6/4",
            "Ada 6-6: 24/18(2) 13/7(2)",
            "");

    @TempDir
    private Path folder;

    private String file(String text) throws IOException {
        Path file = folder.resolve("record.txt");
        Files.writeString(file, text);
        return file.toString();
    }

    private static Run review(String... args) {
        List<String> all = new ArrayList<>(List.of("review"));
        all.addAll(List.of(args));
        all.addAll(List.of("--net", TestNet.path()));
        return Run.of(all.toArray(String[]::new));
    }

    private static String done(String... args) {
        Run run = review(args);
        assertEquals(0, run.code(), run.err());
        return run.out();
    }

    @Test
    void textLooksSo() throws IOException {
        String text = done(file(MATCH)).replace(TestNet.path(), "NET");
        try (var in = getClass().getResourceAsStream("review.txt")) {
            assertEquals(new String(in.readAllBytes(), StandardCharsets.UTF_8), text);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"match", "money"})
    void jsonKeepsToItsSchema(String which) throws IOException {
        String text = done(file(which.equals("match") ? MATCH : MONEY), "--json");
        assertEquals(List.of(), Schemas.faults("review", text));
        JsonNode json = new ObjectMapper().readTree(text);
        assertEquals(which.equals("money"), json.has("caution"));
        double points = 0;
        int counted = 0;
        for (JsonNode game : json.get("gamesReviewed")) {
            for (JsonNode turn : game.get("turns")) {
                for (JsonNode decision : turn.get("decisions")) {
                    boolean first =
                            decision.get("side").equals(json.get("sides").get(0).get("name"));
                    points += first ? decision.get("points").asDouble() : 0;
                    counted += first && decision.get("counted").asBoolean() ? 1 : 0;
                }
            }
        }
        JsonNode side = json.get("sides").get(0);
        assertEquals(
                counted, side.get("plays").asInt() + side.get("cubeDecisions").asInt());
        assertEquals(points / counted, side.get("meanPoints").asDouble(), 1e-5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"cost\" : | \"costs\" :",
                "\"matchLength\" : 2 | \"matchLength\" : 0",
                "\"kind\" : \"play\" | \"kind\" : \"x\""
            })
    void theSchemaRefusesWhatIsWrong(String right, String wrong) throws IOException {
        String text = done(file(MATCH), "--json");
        assertTrue(text.contains(right), "nothing to change");
        assertFalse(Schemas.faults("review", text.replaceFirst(right, wrong)).isEmpty());
    }

    /** One page: nothing to fetch, every link leads to a turn of the page, whatever names and remarks contain. */
    @Test
    void thePageIsSelfContained() throws IOException {
        Path page = folder.resolve("page.html");
        assertEquals("wrote " + page + "\n", done(file(MATCH), "--html", page.toString()));
        String html = Files.readString(page);
        String bare = html.replace("http://www.w3.org/2000/svg", "");
        assertFalse(Pattern.compile("https?:|//|src=|@import|url\\((?!#)")
                .matcher(withoutScript(bare))
                .find());
        Set<String> ids = new HashSet<>();
        Matcher id = Pattern.compile("\\sid=[\"']?([\\w]+)").matcher(html);
        while (id.find()) {
            assertTrue(ids.add(id.group(1)), "twice: " + id.group(1));
        }
        assertTrue(ids.containsAll(Set.of("g1t1", "g1t2", "g1t3", "g1t4", "g1t5")), ids.toString());
        Matcher link = Pattern.compile("href=[\"']#(\\w+)").matcher(html);
        int links = 0;
        while (link.find()) {
            assertTrue(ids.contains(link.group(1)), link.group());
            links++;
        }
        assertTrue(links > 8, "links: " + links);
        assertTrue(html.contains("Ada &lt;1&gt;") && html.contains("Ben &amp; Co") && html.contains("runs &lt;i&gt;"));
        assertFalse(html.contains("<i>") || html.contains("<1>") || html.contains("<b> ") || html.contains("& Co"));
    }

    /** A name with quotes stays inside the attribute in which the curve tells screen readers what it shows. */
    @Test
    void quotesDoNotEndAnAttribute() throws IOException {
        Path page = folder.resolve("page.html");
        String quoted = MATCH.replace("Ada <1>", "Ada \" onload=\"alert(1)");
        done(file(quoted), "--html", page.toString());
        String html = Files.readString(page);
        Matcher label = Pattern.compile("aria-label=\"([^\"]*)\"").matcher(html);
        assertTrue(label.find());
        assertTrue(
                label.group(1).matches("Chance of Ada &#34; onload=&#34;alert\\(1\\) to win game 1, .*"),
                label.group());
    }

    /** The one script has comments and no addresses. */
    private static String withoutScript(String html) {
        return html.substring(0, html.indexOf("<script>"));
    }

    /** Each turn has its boards: one, and a second with the better play where one was missed. */
    @Test
    void turnsHaveTheirBoards() throws IOException {
        Path page = folder.resolve("page.html");
        done(file(MATCH), "--html", page.toString());
        String html = Files.readString(page);
        JsonNode json = new ObjectMapper().readTree(done(file(MATCH), "--json"));
        for (JsonNode turn : json.get("gamesReviewed").get(0).get("turns")) {
            int at = html.indexOf("id=\"g1t" + turn.get("turn").asInt() + "\"");
            String card = html.substring(at, html.indexOf("</details>", at));
            boolean missed = false;
            for (JsonNode decision : turn.get("decisions")) {
                missed |= decision.get("kind").asText().equals("play")
                        && !decision.get("grade").asText().equals("fine");
            }
            assertEquals(missed ? 2 : 1, card.split("<figure>").length - 1, card);
            assertEquals(missed ? 2 : 1, card.split("<use href=\"#board\"").length - 1);
            assertTrue(card.contains(turn.get("positionText").asText()), card);
        }
    }

    /** A spot before each turn and one for the result, as high as the first player's chance; marks where something cost. */
    @Test
    void theCurveIsTheChanceToWin() throws IOException {
        Path page = folder.resolve("page.html");
        done(file(MATCH), "--html", page.toString());
        String html = Files.readString(page);
        JsonNode turns = new ObjectMapper()
                .readTree(done(file(MATCH), "--json"))
                .get("gamesReviewed")
                .get(0)
                .get("turns");
        Matcher line =
                Pattern.compile("<polyline class=\"line\" points=\"([^\"]*)\"").matcher(html);
        assertTrue(line.find());
        String[] spots = line.group(1).split(" ");
        assertEquals(turns.size() + 1, spots.length);
        double bottom = height(spots[turns.size()]);
        // Ada, who is on roll on turns 1, 3 and 5, has resigned, so that the curve ends at 0.
        double top = 12;
        for (int i = 0; i < turns.size(); i++) {
            JsonNode chances = turns.get(i).get("chances");
            String side = i % 2 == 0 ? "win" : "lose";
            double win = chances.get(side + "Single").asDouble()
                    + chances.get(side + "Gammon").asDouble()
                    + chances.get(side + "Backgammon").asDouble();
            assertEquals(win, (bottom - height(spots[i])) / (bottom - top), 0.001);
        }
        for (JsonNode turn : turns) {
            boolean cost = false;
            for (JsonNode decision : turn.get("decisions")) {
                cost |= !decision.get("grade").asText().equals("fine");
            }
            String curve = html.substring(html.indexOf("<svg class=\"curve\""), html.indexOf("</svg>", line.end()));
            assertEquals(
                    cost || turn.get("turn").asInt() == 4,
                    curve.contains("href=\"#g1t" + turn.get("turn").asInt() + "\""));
        }
    }

    private static double height(String spot) {
        return Double.parseDouble(spot.substring(spot.indexOf(',') + 1));
    }

    @Test
    void aStopIsResumedFromAFile() throws IOException {
        Path kept = folder.resolve("kept");
        String whole = done(file(MATCH), "--save", kept.toString());
        assertEquals(whole, done(file(MATCH), "--resume", kept.toString()));
        List<String> lines = Files.readAllLines(kept);
        assertEquals(5, lines.stream().filter(line -> line.startsWith("turn ")).count());
        Files.writeString(kept, String.join("\n", lines.subList(0, lines.size() - 2)) + "\n");
        Run damaged = review(file(MATCH), "--resume", kept.toString());
        assertEquals(2, damaged.code());
        assertEquals(
                "pipwright: '" + kept
                        + "' is not a whole review file (its checksum is wrong): use another copy, or begin"
                        + " anew with --save\n",
                damaged.err());
    }

    @Test
    void threadsChangeNothing() throws IOException {
        assertEquals(done(file(MONEY), "--threads", "1"), done(file(MONEY), "--threads", "3"));
    }

    @Test
    void sgfIsReadAsWell() throws IOException {
        Path sgf = folder.resolve("record.sgf");
        assertEquals(0, Run.of("record", "convert", file(MONEY), sgf.toString()).code());
        assertEquals(done(file(MONEY)), done(sgf.toString()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--lookahead 7 | lookahead 7: use 0 to 6",
                "--rollout -1 | --rollout is -1: play 1 game or more",
                "--save a --resume pom.xml | --save begins a file anew and --resume goes on with one: give one of them",
                "--threads 0 | --threads is 0: use 1 to 1024",
                "--html none/page.html | --html: cannot write 'none/page.html': there is no folder 'none'; see pipwright help review",
                "--resume none | --resume: no such file 'none': check the path; see pipwright help review",
            })
    void mistakesAreToldInALine(String options, String line) throws IOException {
        List<String> args = new ArrayList<>(List.of(file(MATCH)));
        args.addAll(List.of(options.split(" ")));
        assertEquals(new Run(2, "", "pipwright: " + line + "\n"), review(args.toArray(String[]::new)));
    }

    @Test
    void recordsThatCannotBeReviewed() throws IOException {
        String empty = file("pipwright record 1\nplayers: Ada, Ben\nmoney: jacoby\n");
        assertEquals(
                "pipwright: '" + empty + "' has no game yet: there is nothing to review\n",
                review(empty).err());
        String longMatch = file(MATCH.replace("match: 2", "match: 30"));
        assertEquals(
                "pipwright: the match table ends at 25-away, but the match is to 30: give a longer one with --table\n",
                review(longMatch).err());
        String wrong = file(MATCH.replace("8/5 6/5", "8/5 6/4"));
        assertTrue(
                review(wrong).err().contains("line 8, column "), review(wrong).err());
        assertEquals(
                "pipwright: --table is for matches, and this record is of money play: leave it out\n",
                review(file(MONEY), "--table", "x.csv").err());
    }

    /** The invented match of the documents is a record, and reviewing it keeps to the schema. */
    @Test
    void theExampleIsReviewed() {
        String text = done("src/docs/evening.txt", "--lookahead", "0", "--json");
        assertEquals(List.of(), Schemas.faults("review", text));
    }
}
