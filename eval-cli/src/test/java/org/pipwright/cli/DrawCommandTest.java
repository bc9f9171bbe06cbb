package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

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
}
