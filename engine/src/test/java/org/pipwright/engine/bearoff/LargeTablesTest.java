package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables that take minutes of computing: run with {@code -Dpipwright.test.large=true}. */
@EnabledIfSystemProperty(named = "pipwright.test.large", matches = "true")
class LargeTablesTest {
    @ParameterizedTest
    @CsvSource({"8,15,15", "9,15,15", "10,10,15"})
    void rowsBeyondHome(int points, int checkers, int rows) throws IOException {
        assertEquals(rows, OneSidedTableTest.checkRows(points, checkers));
    }
}
