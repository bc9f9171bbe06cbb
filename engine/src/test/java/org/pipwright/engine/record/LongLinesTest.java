package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.Random;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Readers take time in proportion to the text, whatever the length of its lines. The limit of these tests is no measurement:
 * in proportion they take a moment, with the square of the length hours.
 */
@Tag("fast")
class LongLinesTest {
    private static final int LONG = 1_000_000;
    private static final Duration HANGS = Duration.ofMinutes(2);

    private static final String HEAD = "pipwright record 1\nplayers: Ada, Ben\nmatch: 3\n\ngame\n";

    private static <T> T soon(Supplier<T> work) {
        return assertTimeoutPreemptively(HANGS, work::get);
    }

    /** Each has one place for many blanks. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Ada 3-1:_8/5 6/5",
                "Ada 3-1_: 8/5 6/5",
                "Ada_3-1: 8/5 6/5",
                "_Ada 3-1: 8/5 6/5",
                "Ada 3-1: 8/5 6/5_",
                "Ada 3-1: 8/5 6/5_# a note",
                "Ada 3-1: 8/5 6/5 #_"
            })
    void blanksInALine(String line) {
        String text = HEAD + line.replace("_", " ".repeat(LONG)) + "\n";
        GameRecord plain = RecordText.parse(HEAD + line.replace('_', ' '));
        assertEquals(plain, soon(() -> RecordText.parse(text)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"Ada 3-1_\u2028", "Ada_x", "Ada 3-1: 8/5_x", "game_x", "game 1_: 0_- 0x", "_", "x_#y", "##_"})
    void linesThatAreRefusedOrSayNothing(String line) {
        String text = HEAD + line.replace("_", " ".repeat(LONG)) + "\n";
        soon(() -> {
            try {
                return RecordText.parse(text).games().size();
            } catch (InvalidRecordException e) {
                assertEquals(1, e.getMessage().lines().count());
                return 0;
            }
        });
    }

    @Test
    void manySignsThatBeginNoComment() {
        String text = HEAD + "Ada 3-1: 8/5" + "#".repeat(LONG);
        assertThrows(InvalidRecordException.class, () -> soon(() -> RecordText.parse(text)));
    }

    /** Half a million nodes in one line. */
    @Test
    void anSgfFileInOneLine() {
        String text = "(;GM[6]FF[4]PB[Ada]PW[Ben]" + ";C[x]".repeat(LONG / 2) + ")";
        assertEquals(
                LONG / 2,
                soon(() -> SgfText.parse(text)).games().get(0).entries().size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"(;GM[6]B[31_])", "(;GM[6];B[_])", "(;GM[6]RE[_])", "(;GM[6]PB[_])", "(_)", "_", "(;GM[6];_)"})
    void sgfValuesOfAnyLength(String form) {
        for (String filling : new String[] {" ", "a", "ab", "(;", "A[]"}) {
            String text = form.replace("_", filling.repeat(LONG / 2));
            soon(() -> {
                try {
                    return SgfText.parse(text).games().size();
                } catch (InvalidRecordException e) {
                    return 0;
                }
            });
        }
    }

    /** What begins a comment, against the pattern that says it most plainly. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void commentsBeginWhereThePatternSays(long seed) {
        Pattern plain = Pattern.compile("(?:^|\\s)\\s*#");
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            StringBuilder line = new StringBuilder();
            for (int n = random.nextInt(8); n > 0; n--) {
                line.append(" \t#ab".charAt(random.nextInt(5)));
            }
            Matcher found = plain.matcher(line);
            assertEquals(found.find() ? found.end() - 1 : -1, RecordReader.comment(line.toString()), "'" + line + "'");
        }
    }
}
