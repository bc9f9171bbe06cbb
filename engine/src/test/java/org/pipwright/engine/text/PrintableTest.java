package org.pipwright.engine.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("fast")
class PrintableTest {
    /** Letters, marks, numbers, punctuation and symbols of every script are; controls, surrogates and separators are not. */
    @Test
    void whatIsFitByTheCategoriesOfUnicode() {
        for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
            switch (Character.getType(c)) {
                case Character.CONTROL:
                case Character.SURROGATE:
                case Character.LINE_SEPARATOR:
                case Character.PARAGRAPH_SEPARATOR:
                    assertFalse(Printable.is(c), Integer.toHexString(c));
                    break;
                case Character.FORMAT:
                case Character.UNASSIGNED:
                    break;
                default:
                    assertTrue(Printable.is(c), Integer.toHexString(c));
            }
        }
        for (int c : new int[] {0x202a, 0x202e, 0x2066, 0x2069}) {
            assertFalse(Printable.is(c), Integer.toHexString(c));
        }
        assertTrue(Printable.is(0x200d), "joiners make letters of Persian and families of faces");
    }

    @Test
    void whatIsNotIsShownByItsNumber() {
        String fit = "caf\u00e9 \ud83c\udfb2 \u0627";
        assertSame(fit, Printable.of(fit));
        assertEquals("a\\u001b[31m\\u009b\\u202eb\\u000a\\ud83c", Printable.of("a\u001b[31m\u009b\u202eb\n\ud83c"));
        assertEquals("a\nb\\u0007", Printable.with("a\nb\u0007", "\n"));
        assertEquals("a b c", Printable.line("\u2028 a\u0085\u202e\t b \u0007c\n"));
    }

    @Test
    void nothingIsCutInTwo() {
        String dice = "ab\ud83c\udfb2c";
        assertEquals("ab", Printable.head(dice, 3));
        assertEquals("ab\ud83c\udfb2", Printable.head(dice, 4));
        assertEquals(dice, Printable.head(dice, 5));
    }
}
