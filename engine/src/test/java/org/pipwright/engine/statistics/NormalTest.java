package org.pipwright.engine.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalTest {
    /** Values known in closed form or to many digits (standard tables). */
    @ParameterizedTest
    @CsvSource({
        "0,0.5",
        "1,0.841344746068543",
        "-1,0.158655253931457",
        "1.96,0.975002104851780",
        "-9,0",
        "9,1",
        "-Infinity,0",
        "Infinity,1"
    })
    void below(double x, double chance) {
        assertEquals(chance, Normal.below(x), 1e-12);
    }

    /** Two-sided tails as tables print them. */
    @ParameterizedTest
    @CsvSource({
        "0, 1",
        "1, 0.3173105079",
        "1.959963985, 0.05",
        "2.575829304, 0.01",
        "3, 0.0026997961",
        "6, 0.0000000019731753"
    })
    void beyond(double x, double tails) {
        assertEquals(tails, Normal.beyond(x), tails * 2e-8);
    }
}
