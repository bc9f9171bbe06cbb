package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the README and the pages it leads to show is what one gets. */
class DocumentsTest {
    private static final Pattern RANKED = Pattern.compile("^ *(\\d+)  (\\S.*?)  +[+-]?[0-9.]+  .*? ([a-z]+)  .*");

    /** A link to a file of the repository, without the place in it. */
    private static final Pattern LINK = Pattern.compile("]\\((?!http)([^)#]+)[^)]*\\)");

    private static List<String> shown(String command) throws IOException {
        return Example.blocks("").stream()
                .filter(block -> block.startsWith("$ ./pipwright " + command))
                .collect(Collectors.toList());
    }

    private static Run run(String block) {
        String line = block.lines().findFirst().orElseThrow();
        return Run.of(line.substring("$ ./pipwright ".length()).split(" "));
    }

    /** A page that is short enough to be read, and what it and the others lead to is there. */
    @Test
    void linksLeadSomewhere() throws IOException {
        assertTrue(Files.readAllLines(Path.of("../README.md")).size() <= 150);
        for (Path document : Example.documents()) {
            for (String target : LINK.matcher(Files.readString(document))
                    .results()
                    .map(link -> link.group(1))
                    .toList()) {
                assertTrue(Files.exists(document.resolveSibling(target)), document + " leads to " + target);
            }
        }
    }

    @Test
    void boardsAreDrawnAsShown() throws IOException {
        List<String> blocks = shown("draw");
        assertEquals(1, blocks.size());
        for (String block : blocks) {
            assertEquals(block.substring(block.indexOf('\n') + 1), run(block).out());
        }
    }

    /** The picture in the repository is the one that the command beside it makes. */
    @Test
    void picturesAreDrawnAsShown() throws IOException {
        List<String> commands = Example.blocks("").stream()
                .flatMap(String::lines)
                .filter(line -> line.startsWith("./pipwright draw"))
                .collect(Collectors.toList());
        assertEquals(1, commands.size());
        for (String command : commands) {
            String[] words = Example.words(command.substring("./pipwright ".length()));
            String file = words[words.length - 1];
            assertTrue(Example.documentation().contains("](" + file + ")"), "no picture " + file);
            words[words.length - 1] = "-";
            assertEquals(Files.readString(Path.of("..", file)), Run.of(words).out());
        }
    }

    /** Places, plays and grades; the last digits of numbers may differ with the processor. */
    private static List<String> places(String text) {
        return text.lines()
                .map(RANKED::matcher)
                .filter(Matcher::matches)
                .map(line -> line.group(1) + " " + line.group(2) + " " + line.group(3))
                .collect(Collectors.toList());
    }

    @Test
    void playsAreRankedAsShown() throws IOException {
        List<String> blocks = shown("rank");
        assertEquals(3, blocks.size());
        for (String block : blocks) {
            assertEquals(block.contains("--top 5") ? 5 : 3, places(block).size(), block);
            assertEquals(places(block), places(run(block).out()));
        }
    }

    /** The beginning of the review of the example. */
    @Test
    void theExampleIsReviewedAsShown() throws IOException {
        List<String> blocks = shown("review");
        assertEquals(1, blocks.size());
        String shown = blocks.get(0).substring(blocks.get(0).indexOf('\n') + 1);
        String line = blocks.get(0).lines().findFirst().orElseThrow();
        Run run = Run.of(line.substring("$ ./pipwright ".length())
                .replace("eval-cli/", "")
                .split(" "));
        assertTrue(Example.numberless(run.out()).startsWith(Example.numberless(shown)), run.out());
    }

    /** The same roll at two scores: who can use a gammon plays another opening than who cannot. */
    @Test
    void theScoreTurnsTheOrderRound() throws IOException {
        List<String> blocks = shown("rank start --roll 6-4");
        List<String> needsGammon = places(blocks.get(0));
        List<String> needsNone = places(blocks.get(1));
        assertTrue(
                blocks.get(0).contains("--away 2,1 --crawford") && blocks.get(1).contains("--away 1,2 --crawford"));
        assertTrue(needsGammon.get(0).startsWith("1 8/2 6/2 "));
        assertTrue(needsGammon.stream().noneMatch(place -> place.startsWith("2 24/14 ")));
        assertTrue(needsNone.get(0).startsWith("1 24/14 ") && needsNone.get(2).startsWith("3 8/2 6/2 "));
    }

    @Test
    void rolloutsComeOutAsShown() throws IOException {
        List<String> blocks = shown("rollout");
        assertEquals(1, blocks.size());
        for (String block : blocks) {
            assertEquals(
                    Example.numberless(block.substring(block.indexOf('\n') + 1)),
                    Example.numberless(run(block).out()));
        }
    }

    /** Whoever asks the library gets what the command line says. */
    @Test
    void theLibraryExamplesSayWhatTheCommandsSay(@TempDir Path folder) throws Exception {
        List<String> examples = Example.blocks("java");
        assertEquals(3, examples.size());
        assertTrue(examples.stream().allMatch(example -> example.lines().count() <= 12), "at most twelve lines");
        List<String> plays = compileAndRun(examples.get(0), folder).lines().toList();
        Run rank = Run.of("rank", "start", "--roll", "3-1", "--lookahead", "1", "--top", "2");
        assertEquals(places(rank.out()), List.of("1 " + unvalued(plays.get(0)), "2 " + unvalued(plays.get(1))));
        String first = Example.numberless(plays.get(0));
        assertTrue(Example.numberless(Example.documentation()).contains("`" + first + "`"), first);
        String cube = compileAndRun(examples.get(1), folder);
        Run actions = Run.of("cube", "5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar", "--json");
        String action = cube.startsWith("true") ? "double" : "roll";
        assertTrue(actions.out().contains("\"action\" : \"" + action + "\""), cube + actions.out());
        String answer = cube.strip().split(" ")[1].toLowerCase(Locale.ROOT);
        assertTrue(actions.out().contains("\"answer\" : \"" + answer + "\""), cube + actions.out());
        String match = compileAndRun(examples.get(2), folder);
        Run ranked = Run.of("rank", "start", "--roll", "6-4", "--away", "2,4", "--top", "1", "--json");
        assertTrue(ranked.out().contains("\"" + match.substring(0, match.indexOf(" wins")) + "\""), match);
    }

    /** Play and grade. */
    private static String unvalued(String printed) {
        return printed.replaceAll(" [-+]?[0-9.]+ ([a-z]+)$", " $1");
    }

    private static String compileAndRun(String example, Path folder) throws Exception {
        Path source = folder.resolve("Example.java");
        String imports = Example.blocks("java")
                .get(0)
                .lines()
                .filter(DocumentsTest::imports)
                .collect(Collectors.joining("\n"));
        String body = example.lines().filter(line -> !imports(line)).collect(Collectors.joining("\n"));
        Files.writeString(
                source,
                imports + "\npublic class Example { public static void main(String[] args) {\n" + body + "}}\n");
        ByteArrayOutputStream errors = new ByteArrayOutputStream();
        int failed = ToolProvider.getSystemJavaCompiler()
                .run(
                        null,
                        null,
                        errors,
                        "-Xlint:all",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "-d",
                        folder.toString(),
                        source.toString());
        assertEquals(0, failed, errors.toString(StandardCharsets.UTF_8));
        return runMain(folder);
    }

    private static boolean imports(String line) {
        return line.startsWith("import ");
    }

    private static String runMain(Path folder) throws Exception {
        PrintStream before = System.out;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (URLClassLoader loader =
                new URLClassLoader(new URL[] {folder.toUri().toURL()})) {
            System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
            loader.loadClass("Example").getMethod("main", String[].class).invoke(null, (Object) new String[0]);
        } finally {
            System.setOut(before);
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
