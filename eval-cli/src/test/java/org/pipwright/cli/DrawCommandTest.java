package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DrawCommandTest {
    private static final String START = "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24\n\n"
            + " 13  14  15  16  17  18  │    │ 19  20  21  22  23  24\n"
            + "  5●  ·   ·   ·   3○  ·  │    │  5○  ·   ·   ·   ·   2●   ○ opponent  167 pips, 0 off\n"
            + "  5○  ·   ·   ·   3●  ·  │    │  5●  ·   ·   ·   ·   2○   ● on roll   167 pips, 0 off\n"
            + " 12  11  10   9   8   7  │    │  6   5   4   3   2   1\n";

    @Test
    void drawsTheStart() {
        assertEquals(new Run(0, START, ""), Run.of("draw", "start"));
    }

    @Test
    void drawsWithPlainSignsWhereTheLocaleHasNoOthers() {
        String plain =
                START.replace('●', '#').replace('○', 'o').replace('·', '.').replace('│', '|');
        assertEquals(new Run(0, plain, ""), Run.in(StandardCharsets.US_ASCII, "draw", "start"));
        assertEquals(new Run(0, plain, ""), Run.in(StandardCharsets.ISO_8859_1, "draw", "start"));
    }

    @Test
    void drawsTheBarAndWhatIsOff() {
        String board = "10@6 2@bar / 1@3 12@4 1@bar\n\n"
                + " 13  14  15  16  17  18  │    │ 19  20  21  22  23  24\n"
                + "  ·   ·   ·   ·   ·   ·  │ 1○ │  ·   ·  12○  1○  ·   ·    ○ opponent   76 pips, 1 off\n"
                + "  ·   ·   ·   ·   ·   ·  │ 2● │ 10●  ·   ·   ·   ·   ·    ● on roll   110 pips, 3 off\n"
                + " 12  11  10   9   8   7  │    │  6   5   4   3   2   1\n";
        assertEquals(new Run(0, board, ""), Run.of("draw", "10@6 2@bar / 12@4 1@3 1@bar"));
    }

    @Test
    void theTextSaysWhatTheBoardCannotShow() {
        Run run = Run.of(
                "draw",
                "start",
                "--roll",
                "31",
                "--play",
                "6/5 8/5",
                "--cube",
                "2",
                "--owner",
                "them",
                "--away",
                "3,5",
                "--mark",
                "5,20",
                "--caption",
                "Make\nthe point, " + "as everybody does. ".repeat(5));
        String facts = "\nto play 3-1: 8/5 6/5\ncube at 2, owned by the opponent\n3 away against 5 away\n"
                + "marked points 5, 20\n\nMake the point, "
                + "as everybody does. ".repeat(5).strip() + "\n";
        assertEquals(new Run(0, START + facts, ""), run);
    }

    @Test
    void theTextShowsTheBoardAfterThePlay() {
        Run run = Run.of("draw", "start", "--roll", "31", "--play", "8/5 6/5", "--after");
        String after = Run.of("draw", "4@6 2@5 2@8 5@13 2@24 / 5@6 3@8 5@13 2@24")
                .out()
                .replace("\u25cf on roll ", "\u25cf you     ")
                .replace("\u25cb opponent", "\u25cb on roll ");
        assertTrue(
                run.out()
                        .equals(START + "\nto play 3-1: 8/5 6/5\n\n"
                                + "after 8/5 6/5, seen from the side that has moved:\n" + after),
                run.out());
    }

    @Test
    void bothFilesAreWrittenAndNamed(@TempDir Path folder) throws IOException {
        Path svg = folder.resolve("a.svg");
        Path png = folder.resolve("a.png");
        String[] line = {"draw", "start", "--svg", svg.toString(), "--png", png.toString(), "--width", "350"};
        assertEquals(new Run(0, "wrote " + svg + "\nwrote " + png + "\n", ""), Run.of(line));
        BufferedImage image = ImageIO.read(png.toFile());
        assertEquals(List.of(350, 240), List.of(image.getWidth(), image.getHeight()));
        assertEquals(new Run(0, Files.readString(svg), ""), Run.of("draw", "start", "--svg", "-"));
        byte[] first = Files.readAllBytes(png);
        Run.of(line);
        assertTrue(Arrays.equals(first, Files.readAllBytes(png)), "the same picture, the same bytes");
        try (var files = Files.list(folder)) {
            assertEquals(2, files.collect(Collectors.toList()).size(), "nothing else is left");
        }
    }

    @Test
    void beforeAndAfterAreSideBySide() {
        String alone = Run.of("draw", "start", "--svg", "-").out();
        String both = Run.of("draw", "start", "--roll", "31", "--play", "8/5 6/5", "--after", "--svg", "-")
                .out();
        assertTrue(alone.contains("viewBox=\"0 0 700 480\""), alone);
        assertTrue(both.contains("viewBox=\"0 0 1400 510\""), both);
        assertTrue(both.contains(">Before</text>") && both.contains(">After 8/5 6/5</text>"), both);
    }

    @Test
    void anAsciiTerminalStillGetsValidSvg() {
        Run run = Run.in(StandardCharsets.US_ASCII, "draw", "start", "--caption", "caf\u00e9", "--svg", "-");
        assertTrue(run.out().contains(">caf&#233;</text>"), run.out());
    }
}
