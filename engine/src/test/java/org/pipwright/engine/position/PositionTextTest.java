package org.pipwright.engine.position;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.play.RandomWalk;

@Tag("fast")
class PositionTextTest {
    private static final String START = "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24";

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 15})
    void printThenParseGivesThePosition(int checkers) {
        RandomWalk walk = new RandomWalk(checkers, 41);
        for (Position position : walk.next(3000)) {
            String text = PositionText.print(position);
            assertEquals(position, PositionText.parse(text), text);
            assertEquals(position.swapped(), PositionText.parse(PositionText.print(position.swapped())), text);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 15})
    void orderCommasCapitalsAndSpacesDoNotMatter(int checkers) {
        Random random = new Random(42);
        for (Position position : new RandomWalk(checkers, 43).next(1000)) {
            String text = PositionText.print(position);
            int of = text.indexOf(" of ");
            String tail = of < 0 ? "" : text.substring(of);
            String[] sides = (of < 0 ? text : text.substring(0, of)).split(" / ");
            String untidy = "  " + shuffled(sides[0], random) + "/" + shuffled(sides[1], random) + tail + "\n";
            assertEquals(position, PositionText.parse(untidy), untidy);
        }
    }

    private static String shuffled(String side, Random random) {
        List<String> groups = new ArrayList<>(Arrays.asList(side.split(" ")));
        Collections.shuffle(groups, random);
        return String.join(random.nextBoolean() ? ", " : ",  \t", groups).toUpperCase();
    }

    @Test
    void theStartHasAName() {
        assertEquals(Position.start(), PositionText.parse("Start"));
        assertEquals(START, PositionText.print(Position.start()));
        assertEquals("1@22 1@23 1@24 / 1@22 1@23 1@24 of 3", PositionText.print(PositionText.parse("start of 3")));
    }

    @Test
    void aSideThatIsAllOffSaysSo() {
        Position won = PositionText.parse("off / 3@2 1@bar 11@off");
        assertEquals(15, won.borneOff());
        assertEquals("off / 3@2 1@bar", PositionText.print(won));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|with one slash between them, but '' has none",
                "5@6 3@8|with one slash between them, but '5@6 3@8' has none",
                "1@6/1@6/1@6|has 2",
                "5@6 /|the opponent has nothing",
                "/ 5@6|the side on roll has nothing",
                "5x6 / 5@6|'5x6' of the side on roll is not a group of checkers",
                "5@6 / five@6|'five@6' of the opponent is not a group of checkers",
                "5@6 off / 5@6|'off' of the side on roll is not a group of checkers",
                "-1@6 / 5@6|'-1@6' of the side on roll is not a group of checkers",
                "16@6 / 5@6|'16@6' of the side on roll has 16 checkers: use 1 to 15",
                "0@6 / 5@6|'0@6' of the side on roll has 0 checkers: use 1 to 15",
                "8@6 8@5 / 5@6|the side on roll has 16 checkers on the board: at most 15",
                "2@6 2@5 / 2@6 of 3|the side on roll has 4 checkers on the board: at most 3",
                "5@0 / 5@6|'5@0' of the side on roll has no such point: use 1 to 24",
                "5@6 / 5@26|'5@26' of the opponent has no such point: use 1 to 24",
                "5@6 / 5@25|no such point: use 1 to 24, counted from its own home, or bar",
                "2@6 3@6 / 5@6|the side on roll names point 6 twice: join the groups",
                "1@bar 1@bar / 5@6|the side on roll names the bar twice: join the groups",
                "5@6 3@off 7@off / 5@6|the side on roll names the checkers off twice: join the groups",
                "5@6 9@off / 5@6|5 checkers on the board and 9 off: together they must be 15",
                "2@20 / 3@5|both sides have checkers on one point: 20 of the side on roll is the opponent's 5",
                "off / off|both sides have borne off every checker",
                "1@6 / 1@6 of 16|a side has 1 to 15 checkers, not 16",
                "1@6 / 1@6 of 0|a side has 1 to 15 checkers, not 0",
                "1@6 / 1@6 of three|'of three' should give the checkers a side, as in 'of 3'",
                "start of 14|no starting position with 14 checkers a side",
                "999999999999@6 / 1@6|'999999999999@6' of the side on roll is not a group of checkers",
            })
    void aFaultIsNamedInOneLine(String text, String expected) {
        InvalidPositionException fault =
                assertThrows(InvalidPositionException.class, () -> PositionText.parse(text == null ? "" : text));
        assertTrue(fault.getMessage().contains(expected), fault.getMessage());
        assertFalse(fault.getMessage().contains("\n"), fault.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1@6 ", "/", "of ", " ", "é", "1"})
    void aHugeTextIsRefusedShortly(String piece) {
        String huge = piece.repeat(500_000);
        InvalidPositionException fault = assertThrows(InvalidPositionException.class, () -> PositionText.parse(huge));
        assertTrue(fault.getMessage().startsWith("the position has " + huge.length() + " characters, at most 1000"));
        assertTrue(fault.getMessage().length() < 200);
    }

    @Test
    void controlCharactersDoNotReachTheErrorLine() {
        InvalidPositionException fault =
                assertThrows(InvalidPositionException.class, () -> PositionText.parse("\u001b[31m5@6\u0007x / 5@6"));
        assertTrue(fault.getMessage().chars().noneMatch(Character::isISOControl), fault.getMessage());
    }

    /** The quick reader against the one that knows everything: texts with one sign changed, left out or put in. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theQuickReaderReadsTheSame(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String signs = "0123456789@/ ,barofstx";
        int quick = 0;
        for (int n = 0; n < 20_000; n++) {
            StringBuilder text = new StringBuilder(PositionText.print(scattered(random)));
            int at = random.nextInt(text.length());
            String sign = "" + signs.charAt(random.nextInt(signs.length()));
            switch (random.nextInt(4)) {
                case 0 -> text.replace(at, at + 1, sign);
                case 1 -> text.deleteCharAt(at);
                case 2 -> text.insert(at, sign);
                default -> quick++;
            }
            String changed = text.toString();
            assertEquals(outcome(() -> PositionText.parseAny(changed)), outcome(() -> PositionText.parse(changed)));
        }
        assertTrue(quick > 4000, "texts left as they were");
    }

    private static String outcome(Supplier<Position> reading) {
        try {
            return reading.get().toString();
        } catch (InvalidPositionException e) {
            return e.getMessage();
        }
    }

    /** Any number of checkers of each side on points of their own half, some on the bar. */
    private static Position scattered(SplittableRandom random) {
        int[][] sides = new int[2][Planes.PLACES];
        for (int[] side : sides) {
            int onBoard = 1 + random.nextInt(Position.FULL);
            for (int n = 0; n < onBoard; n++) {
                side[random.nextInt(10) == 0 ? Planes.BAR : 1 + random.nextInt(12)]++;
            }
            side[Planes.OFF] = Position.FULL - onBoard;
        }
        return Position.of(sides[0], sides[1]);
    }
}
