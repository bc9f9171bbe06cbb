package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The lesson's pictures and tables are those that the commands beside them make. */
class LessonTest {
    private static final Path LESSON = Path.of("../docs/lesson.md");

    private static final String SHOWN = "$ ./pipwright ";

    private static final String UNSHOWN = "./pipwright ";

    private static List<String> blocks(String begin) throws IOException {
        return Example.blocks(LESSON, "").stream()
                .map(String::stripTrailing)
                .filter(block -> block.startsWith(begin))
                .collect(Collectors.toList());
    }

    @Test
    void whatIsShownIsPrinted() throws IOException {
        List<String> blocks = blocks(SHOWN);
        assertEquals(3, blocks.size());
        for (String block : blocks) {
            String command = block.lines().findFirst().orElseThrow();
            Run run = Run.of(Example.words(command.substring(SHOWN.length())));
            assertEquals(
                    new Run(0, Example.numberless(block.substring(command.length() + 1)) + "\n", ""), rounded(run));
        }
    }

    private static Run rounded(Run run) {
        return new Run(run.code(), Example.numberless(run.out()), run.err());
    }

    @Test
    void picturesAreDrawnAsShown() throws IOException {
        String lesson = Files.readString(LESSON);
        List<String> commands = blocks(UNSHOWN + "draw ");
        assertEquals(4, commands.size());
        for (String command : commands) {
            String[] words = Example.words(command.substring(UNSHOWN.length()));
            String file = words[words.length - 1];
            assertTrue(lesson.contains("](" + file.substring("docs/".length()) + ")"), "no picture " + file);
            words[words.length - 1] = "-";
            assertEquals(Files.readString(Path.of("..", file)), Run.of(words).out());
        }
    }

    /** What takes longer is only run, with fewer exercises and without lookahead; which positions it finds may differ with the processor. */
    @Test
    void sheetsAndReviewsAreWritten(@TempDir Path folder) throws IOException {
        List<String> commands = blocks(UNSHOWN + "drill ");
        commands.addAll(blocks(UNSHOWN + "review "));
        assertEquals(2, commands.size());
        for (String command : commands) {
            String shorter = command.replace("--count 6", "--count 1 --lookahead 0")
                    .replace("evening.txt ", "evening.txt --lookahead 0 ")
                    .replace(" eval-cli/", " ")
                    .replaceAll("(--(?:sheet|page|html)) ", "$1 " + folder + "/");
            assertEquals(
                    0,
                    Run.of(Example.words(shorter.substring(UNSHOWN.length()))).code(),
                    shorter);
        }
        for (String page : List.of("hitting.html", "hitting-page.html", "review.html")) {
            assertTrue(Files.readString(folder.resolve(page)).endsWith("</html>\n"), page);
        }
    }
}
