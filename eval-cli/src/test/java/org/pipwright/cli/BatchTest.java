package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** Many positions in, one line of JSON for each out. */
class BatchTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Else the first test that needs the tables would find them announced on standard error. */
    @BeforeAll
    static void buildTables() {
        assertEquals(0, Run.of("tables").code());
    }

    private static Run batch(String input, String line) {
        return Run.withInput(input, (line + " --batch - --net " + TestNet.path()).split(" "));
    }

    private static List<JsonNode> answers(Run run) throws IOException {
        List<JsonNode> answers = new ArrayList<>();
        for (String line : run.out().lines().toList()) {
            answers.add(JSON.readTree(line));
        }
        return answers;
    }

    /** What a single position gets, as the answer to a line. */
    private static JsonNode single(long line, String... args) throws IOException {
        ObjectNode json = (ObjectNode) JSON.readTree(Run.of(args).out());
        return json.put("line", line);
    }

    private static void assertSame(JsonNode expected, JsonNode found) throws IOException {
        // Through the same reader, since a number may be an int in one tree and a long in the other.
        assertEquals(JSON.readTree(expected.toString()), JSON.readTree(found.toString()));
    }

    /** Text, JSON and JSON with members; contact, tables and finished games; each as the command answers it alone. */
    @Test
    void eachLineGetsWhatTheSinglePositionGets() throws IOException {
        List<String> positions =
                List.of("start", "1@6 / 1@6", "15@6 / 15@6", "off / 3@4", "1@bar 14@1 / 2@1 2@2 2@3 2@4 2@5 5@6");
        StringBuilder input = new StringBuilder("\n");
        for (int i = 0; i < positions.size(); i++) {
            Position position = PositionText.parse(positions.get(i));
            String json = PositionJson.print(position);
            input.append(List.of(
                            positions.get(i),
                            json,
                            "{\"position\": " + json + "}",
                            "{\"position\":\"" + position + "\"}")
                    .get(i % 4));
            input.append(i % 2 == 0 ? "\n" : "  \r\n");
        }
        for (String options : List.of("", " --lookahead 1")) {
            Run run = batch(input.toString(), "odds" + options);
            assertEquals("", run.err());
            assertEquals(0, run.code());
            List<JsonNode> answers = answers(run);
            for (int i = 0; i < positions.size(); i++) {
                assertEquals(List.of(), Schemas.faults("odds", answers.get(i).toString()));
                String line =
                        "odds^" + positions.get(i) + "^--json^--net^" + TestNet.path() + options.replace(' ', '^');
                JsonNode alone = single(i + 2, line.split("\\^"));
                assertSame(alone, answers.get(i));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " --away 3,5", " --cube 2 --owner me --lookahead 1"})
    void ranksWithTheRollOfTheLineOrTheUsualOne(String options) throws IOException {
        String input =
                "start 3-1\nstart\n{\"roll\":\"64\",\"position\":\"start\"}\nstart of 15\n2@3 1@bar / 2@2 1@18 of 3 52\n";
        Run run = batch(input, "rank --roll 21 --top 2" + options);
        assertEquals("", run.err());
        List<JsonNode> answers = answers(run);
        List<String> rolls = List.of("3-1", "2-1", "6-4", "2-1", "5-2");
        for (int i = 0; i < rolls.size(); i++) {
            assertEquals(List.of(), Schemas.faults("rank", answers.get(i).toString()));
            String position = i < 4 ? "start" : "2@3 1@bar / 2@2 1@18 of 3";
            String line = "rank^" + position + "^--roll^" + rolls.get(i) + "^--top^2^--json^--net^" + TestNet.path()
                    + options.replace(' ', '^');
            assertSame(single(i + 1, line.split("\\^")), answers.get(i));
        }
    }

    @Test
    void commentsAndBlankLinesArePassedOver() throws IOException {
        Run run = batch("# openings\n\nstart 3-1  # makes the 5 point\n  # next\nstart 6-1 #\n", "rank --top 1");
        assertEquals("", run.err());
        List<JsonNode> answers = answers(run);
        assertEquals(
                List.of(3, 5),
                answers.stream().map(each -> each.get("line").asInt()).toList());
        assertEquals(
                List.of("3-1", "6-1"),
                answers.stream().map(each -> each.get("roll").asText()).toList());
    }

    /** Rows of CSV and of the table say what the objects say, in their order; a line with an error has a row too. */
    @ParameterizedTest
    @ValueSource(strings = {"rank --top 2", "rank --top 2 --away 3,5", "rank --top 2 --cube 1", "odds"})
    void csvAndTableSayWhatTheJsonSays(String command) throws IOException {
        boolean rank = command.startsWith("rank");
        String roll = rank ? " 3-1" : "";
        String input = "start" + roll + "\n# and\nnonsense, \"quoted\"\n2@3 1@bar / 2@2 1@18 of 3" + roll + "\n";
        List<JsonNode> answers = answers(batch(input, command));
        Run csv = batch(input, command + " --format csv");
        assertEquals(2, csv.code());
        List<List<String>> rows = csv.out().lines().map(BatchTest::cells).toList();
        List<String> head = rows.get(0);
        List<String> table =
                batch(input, command + " --format table").out().lines().toList();
        assertEquals(rows.size(), table.size());
        int at = 1;
        for (JsonNode answer : answers) {
            if (answer.has("error")) {
                List<String> row = rows.get(at);
                assertEquals(answer.get("line").asText(), row.get(0));
                assertEquals(answer.get("error").asText(), row.get(head.size() - 1));
                assertEquals("", String.join("", row.subList(1, head.size() - 1)));
                assertEquals(
                        answer.get("line").asText() + "  error: "
                                + answer.get("error").asText(),
                        table.get(at++).strip());
                continue;
            }
            for (JsonNode each : rank ? answer.get("plays") : List.of(answer)) {
                List<String> row = rows.get(at);
                assertEquals(head.size(), row.size());
                assertEquals(answer.get("line").asText(), row.get(0));
                assertEquals(answer.get("positionText").asText(), row.get(1));
                String value = each.has("cubefulValue") ? "cubefulValue" : "equity";
                assertEquals(
                        each.get(value).asDouble(),
                        Double.parseDouble(row.get(head.indexOf(rank ? "value" : "equity"))),
                        1e-9);
                assertEquals(each.get("basis").asText(), row.get(head.indexOf("basis")));
                for (String chance : List.of(
                        "winSingle", "winGammon", "winBackgammon", "loseSingle", "loseGammon", "loseBackgammon")) {
                    assertEquals(
                            each.get("chances").get(chance).asDouble(),
                            Double.parseDouble(row.get(head.indexOf(chance))),
                            1e-9);
                }
                if (rank) {
                    assertEquals(each.get("playText").asText(), row.get(head.indexOf("play")));
                    assertTrue(table.get(at).contains(" " + each.get("playText").asText() + " "), table.get(at));
                } else {
                    assertTrue(table.get(at).endsWith(answer.get("positionText").asText()), table.get(at));
                }
                at++;
            }
        }
        assertEquals(rows.size(), at);
    }

    /** Cells of a row of CSV, by the letter. */
    private static List<String> cells(String row) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < row.length(); i++) {
            char c = row.charAt(i);
            if (c == '"' && quoted && i + 1 < row.length() && row.charAt(i + 1) == '"') {
                cell.append(row.charAt(i++));
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    @Test
    void aBadLineIsAnsweredByAnErrorAndTheRestGoesOn() throws IOException {
        String input =
                "start\nnonsense\n\n{\"position\":\"start\"}\n{\"position\"\n{\"position\":\"start\",\"dice\":\"31\"}\n"
                        + "{\"roll\":\"31\"}\n{} {}\n{\"position\":\"start\"} 5\n" + "5".repeat(30_000)
                        + "\n16@1 / 1@1\nstart 31\nstart";
        Run run = batch(input, "odds");
        assertEquals(2, run.code());
        assertEquals("pipwright: 9 of 12 lines could not be answered: the answers with \"error\" say why\n", run.err());
        List<JsonNode> answers = answers(run);
        assertEquals(
                List.of(1, 2, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13),
                answers.stream().map(answer -> answer.get("line").asInt()).toList());
        for (JsonNode answer : answers) {
            boolean good = List.of(1, 4, 13).contains(answer.get("line").asInt());
            assertEquals(List.of(), Schemas.faults(good ? "odds" : "error", answer.toString()));
            assertTrue(good || answer.get("error").asText().lines().count() == 1, answer.toString());
        }
        assertTrue(answers.get(8).get("error").asText().contains("longer than 20000 bytes"));
    }

    @Test
    void errorsOfRollsAreErrorsOfLines() throws IOException {
        String input =
                "start\nstart 7-1\noff / 1@6 31\n{\"position\":\"start\",\"roll\":31}\n{\"position\":\"start\",\"roll\":\"x\"}\nstart 31\n";
        Run run = batch(input, "rank");
        assertEquals(2, run.code());
        List<String> errors = answers(run).stream()
                .map(answer -> answer.path("error").asText())
                .collect(Collectors.toList());
        assertTrue(errors.get(0).startsWith("no roll given: "), errors.get(0));
        assertTrue(errors.get(1).startsWith("'7-1' is not a roll"), errors.get(1));
        assertTrue(errors.get(2).startsWith("the game is over"), errors.get(2));
        assertTrue(errors.get(3).length() > 0 && errors.get(4).startsWith("'x' is not a roll"), errors.toString());
        assertEquals("", errors.get(5));
    }

    /** Thousands of lines by several threads: each answer in its place, and the same with one. */
    @Test
    void answersComeInOrderWhateverTheThreads() throws IOException {
        SplittableRandom random = new SplittableRandom(4);
        List<String> positions = new ArrayList<>();
        Position position = Position.start();
        while (positions.size() < 3000) {
            positions.add(position.toString());
            List<Play> plays = Plays.legal(position, Roll.of(1 + random.nextInt(6), 1 + random.nextInt(6)));
            Position next = plays.get(random.nextInt(plays.size())).next();
            position = next.finished() ? Position.start() : next;
        }
        String input = String.join("\n", positions);
        Run run = batch(input, "odds --no-simulation --threads 3");
        assertEquals(0, run.code(), run.err());
        List<JsonNode> answers = answers(run);
        for (int i = 0; i < positions.size(); i++) {
            assertEquals(i + 1, answers.get(i).get("line").asInt());
            assertEquals(positions.get(i), answers.get(i).get("positionText").asText());
        }
        assertEquals(run.out(), batch(input, "odds --no-simulation --threads 1").out());
    }

    @Test
    void racesAreSimulatedUnlessThatIsLeftOut() throws IOException {
        String race = "5@8 10@3 / 2@3 1@6\n";
        JsonNode net = answers(batch(race, "odds --no-simulation")).get(0);
        assertEquals("estimated", net.get("basis").asText());
        JsonNode simulated = answers(batch(race, "odds")).get(0);
        assertEquals("estimated by simulation", simulated.get("basis").asText());
        assertSame(single(1, "odds", race.strip(), "--json", "--net", TestNet.path()), simulated);
        for (String cube : new String[] {"", " --cube 1", " --away 3,5"}) {
            JsonNode ranked = answers(batch(race, "rank --roll 21" + cube)).get(0);
            String line = "rank " + race.strip() + " --roll 21 --json --net " + TestNet.path() + cube;
            assertSame(single(1, line.split(" ")), ranked);
            assertEquals(
                    "estimated by simulation",
                    ranked.get("plays").get(0).get("basis").asText());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "odds start --batch FILE | --batch reads the positions from a file: leave POSITION out",
                "odds --batch FILE --rollout 36 | --rollout is for single positions: leave it out with --batch",
                "rank --batch FILE --seconds 1 | --seconds is for single positions: leave it out with --batch",
                "rank --batch FILE --plays 8/5 | --plays is for single positions: leave it out with --batch",
                "rank --batch FILE --explain | --explain is for single positions: leave it out with --batch",
                "rank --batch FILE --cube 1 --lookahead 7 | --lookahead is 7: use 0 to 6",
                "odds --batch FILE/missing | cannot read 'FILE/missing': it is missing, a folder, or not yours to read",
                "odds | odds needs POSITION; see pipwright help odds"
            })
    void whatDoesNotGoTogetherIsTold(String line, @TempDir Path folder) {
        String[] parts = line.replace("FILE", folder.toString()).split(" \\| ");
        Run run = Run.of((parts[0] + " --net " + TestNet.path()).split(" "));
        assertEquals(new Run(2, "", "pipwright: " + parts[1] + "\n"), run);
    }

    @Test
    void aFileIsReadAndItsSpeedTold(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("positions"), "start\nstart\n");
        Run run = Run.of("odds", "--batch", file.toString(), "--stats", "--net", TestNet.path());
        assertEquals(2, run.out().lines().count());
        assertTrue(run.err().matches("2 lines answered in [^\n]* s, [0-9,]+ a second\n"), run.err());
        Path empty = Files.createFile(folder.resolve("empty"));
        assertEquals(new Run(0, "", ""), Run.of("odds", "--batch", empty.toString(), "--net", TestNet.path()));
    }

    /** More than a buffer through a pipe that is named as a file, as a shell's substitution of a process is. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aPipeByItsPathIsReadToItsEnd(@TempDir Path folder) throws Exception {
        Path pipe = folder.resolve("pipe");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        int lines = 20_000;
        Thread writer = new Thread(() -> {
            try {
                Files.writeString(pipe, "start\n".repeat(lines));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        writer.setDaemon(true);
        writer.start();
        Run run = Run.of("odds", "--batch", pipe.toString(), "--net", TestNet.path());
        assertEquals("", run.err());
        assertEquals(lines, run.out().lines().count());
        assertEquals(0, run.code());
    }

    private static Process start(String line) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"),
                "org.pipwright.cli.Main"));
        command.addAll(List.of((line + " --net " + TestNet.path()).split(" ")));
        return new ProcessBuilder(command).start();
    }

    /** A real pipe whose writer waits for each answer before it asks the next question. */
    @Test
    void eachAnswerComesAtOnce() throws Exception {
        Process process = start("odds --batch -");
        try (OutputStream in = process.getOutputStream();
                BufferedReader out = process.inputReader()) {
            for (int line = 1; line <= 3; line++) {
                in.write("start\n".getBytes(StandardCharsets.UTF_8));
                in.flush();
                assertEquals(line, JSON.readTree(out.readLine()).get("line").asInt());
            }
        } finally {
            process.destroyForcibly();
        }
    }

    /** As with head: the reader has enough, and nobody is told anything. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aReaderThatLeavesEndsItQuietly(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("positions"), "start\n".repeat(50_000));
        Process process = start("odds --batch " + file);
        try (BufferedReader out = process.inputReader()) {
            assertEquals(1, JSON.readTree(out.readLine()).get("line").asInt());
        }
        assertEquals("", new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8));
        assertEquals(0, process.waitFor());
    }
}
