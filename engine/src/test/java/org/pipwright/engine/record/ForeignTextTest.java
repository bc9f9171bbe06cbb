package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.text.Printable;

/** Names and notes in any script go from text to SGF and back; what is not fit to print never gets into a record. */
class ForeignTextTest {
    private static final int AT_ONCE = 30;

    /** All characters that have a meaning, in names and notes of thirty. */
    @Test
    void everyScriptGoesThereAndBack() {
        StringBuilder some = new StringBuilder();
        for (int c = '!'; c <= Character.MAX_CODE_POINT; c++) {
            if (Character.isDefined(c)
                    && Printable.is(c)
                    && !Character.isWhitespace(c)
                    && Character.getType(c) != Character.PRIVATE_USE
                    && ",:/#\ufeff".indexOf(c) < 0) {
                some.appendCodePoint(c);
                if (some.codePointCount(0, some.length()) == AT_ONCE / 2) {
                    thereAndBack(some.toString());
                    some.setLength(0);
                }
            }
        }
        thereAndBack(some + "x");
    }

    private static void thereAndBack(String text) {
        Heading heading = new Heading(
                List.of("(" + text, "Ben"), new Rules(3, false, false), Map.of("event", text), List.of(text));
        RecordBuilder builder = new RecordBuilder(heading);
        builder.game();
        builder.add(new Entry.Remark(text));
        GameRecord record = builder.build();
        GameRecord back = SgfText.parse(SgfText.print(record));
        assertEquals(record, back, text);
        assertEquals(record, RecordText.parse(RecordText.print(back)), text);
    }

    /** Names of SGF files with controls of all kinds, and one that is cut where a character has two halves. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "A\u0080\u009f\u001b[31mda",
                "\u202eadA\u2066",
                "A\u2028d\u2029a\u0007",
                "\ud83c",
                "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\ud83c\udfb2\ud83c\udfb2"
            })
    void whatConvertWritesCheckAccepts(String name) {
        GameRecord read = SgfText.parse(
                "(;GM[6]FF[4]PB[" + name + "]PW[Ben]EV[" + name + "]C[" + name + "];B[31hefe]C[" + name + "])");
        String text = RecordText.print(read);
        assertEquals(read, RecordText.parse(text));
        assertTrue(text.codePoints().allMatch(c -> c == '\n' || Printable.is(c)), text);
    }

    /** What would not come back from a line of text is refused where it would get into a record. */
    @ParameterizedTest
    @ValueSource(strings = {"a\u2028b", "a\u2029b", "a\u0085b", "a\nb", "a\u202eb", "a\u0007b", " a", "a  b"})
    void recordsTakeOneLineOfText(String text) {
        assertThrows(IllegalArgumentException.class, () -> new Entry.Remark(text));
        Rules rules = new Rules(3, false, false);
        for (Executable made : List.<Executable>of(
                () -> new Heading(List.of(text, "Ben"), rules, Map.of(), List.of()),
                () -> new Heading(List.of("Ada", "Ben"), rules, Map.of("event", text), List.of()),
                () -> new Heading(List.of("Ada", "Ben"), rules, Map.of(), List.of(text)))) {
            assertThrows(IllegalArgumentException.class, made);
        }
    }
}
