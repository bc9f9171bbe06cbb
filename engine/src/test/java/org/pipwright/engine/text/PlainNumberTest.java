package org.pipwright.engine.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlainNumberTest {
    /** Whatever Java prints of a number is read back as it. */
    @Test
    void whatIsPrintedIsRead() {
        SplittableRandom random = new SplittableRandom(4);
        for (int i = 0; i < 1000; i++) {
            double number = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(number)) {
                assertEquals(number, PlainNumber.decimal(Double.toString(number)));
            }
            long whole = random.nextLong() >> random.nextInt(64);
            assertEquals(whole, PlainNumber.whole(Long.toString(whole)));
        }
        assertEquals(Long.MIN_VALUE, PlainNumber.whole("-9223372036854775808"));
        assertEquals(0.5, PlainNumber.decimal("+.5"));
        assertEquals(12, PlainNumber.decimal("12."));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                ".",
                "\u0663",
                "1\u0663",
                "0x10",
                "0x1p3",
                "5f",
                "5d",
                "5L",
                "NaN",
                "Infinity",
                "1_000",
                " 5",
                "5 ",
                "1e",
                "e5",
                "1,5",
                "--5",
                "9223372036854775808x"
            })
    void othersAreNot(String text) {
        assertThrows(NumberFormatException.class, () -> PlainNumber.decimal(text));
        assertThrows(NumberFormatException.class, () -> PlainNumber.whole(text));
    }

    @Test
    void wholeNumbersHaveNoPointAndFitALong() {
        for (String text : new String[] {"1.0", "1e3", "9223372036854775808", "99999999999999999999"}) {
            assertThrows(NumberFormatException.class, () -> PlainNumber.whole(text));
        }
    }
}
