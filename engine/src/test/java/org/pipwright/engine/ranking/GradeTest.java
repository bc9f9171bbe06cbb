package org.pipwright.engine.ranking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GradeTest {
    @ParameterizedTest
    @CsvSource({
        "0, fine",
        "-0.0099, fine",
        "-0.010, thin",
        "-0.0399, thin",
        "-0.040, costly",
        "-0.0999, costly",
        "-0.100, heavy",
        "-6, heavy"
    })
    void limitsBelongToTheWorseGrade(double cost, String word) {
        assertEquals(word, Grade.ofCost(cost).word());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.001, Double.NaN})
    void whatIsNoCostIsRefused(double cost) {
        assertThrows(IllegalArgumentException.class, () -> Grade.ofCost(cost));
    }
}
