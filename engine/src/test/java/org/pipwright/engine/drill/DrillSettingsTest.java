package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrillSettingsTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0.1, 0.1, 1, 4, 10",
        "1, 0, 0.1, 1, 4, 10",
        "1, NaN, 0.1, 1, 4, 10",
        "1, 0.1, 0, 1, 4, 10",
        "1, 0.1, 0.1, 4, 4, 10",
        "1, 0.1, 0.1, -1, 4, 10",
        "1, 0.1, 0.1, 1, 0, 10",
        "1, 0.1, 0.1, 1, 4, 0"
    })
    void outOfRangeIsRefused(int count, double cost, double margin, int lookahead, int apart, int games) {
        assertThrows(
                IllegalArgumentException.class,
                () -> new DrillSettings(
                        Theme.OPENING, count, 1, new Clarity(cost, margin, lookahead, true), apart, games));
    }
}
