package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables that take minutes of computing: run with {@code -Dpipwright.test.large=true}. */
@EnabledIfSystemProperty(named = "pipwright.test.large", matches = "true")
class LargeTablesTest {
    @ParameterizedTest
    @CsvSource({"8,15,15", "9,15,15", "10,10,15"})
    void rowsBeyondHome(int points, int checkers, int rows) throws IOException {
        assertEquals(rows, OneSidedTableTest.checkRows(points, checkers));
    }

    @ParameterizedTest
    @ValueSource(ints = {8, 9})
    void racesBeyondHome(int points) throws IOException {
        EndgameTables tables = EndgameTables.of(Tables.oneSided(points, 15), Tables.twoSided());
        for (List<String> row : RaceChancesTest.rows(points)) {
            RaceChancesTest.check(tables, row);
        }
    }
}
