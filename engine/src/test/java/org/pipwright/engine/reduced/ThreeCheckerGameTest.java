package org.pipwright.engine.reduced;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.pipwright.engine.position.Position;

/** The game with three checkers a side, from a file that has been solved before: its solution takes minutes. */
@EnabledIfSystemProperty(named = "pipwright.three", matches = ".+", disabledReason = "name a solved table")
class ThreeCheckerGameTest {
    @Test
    void equitiesAndChancesAreTheKnownOnes() throws IOException {
        Path file = Path.of(System.getProperty("pipwright.three"));
        ReducedTable table = ReducedTableFile.read(file, new ReducedGame(3), 2);
        GameChecks checks = new GameChecks(table, "three-checker");

        assertTrue(table.residual() < 1e-9, "residual " + table.residual());
        checks.fixedPoint(2000, 1e-9);
        checks.equities(1e-6);
        checks.openings(1e-6);
        assertEquals(0.1106905944, table.equity(Position.start(3)), 1e-9);
        assertEquals(0.0836795445, checks.openingEquity(), 1e-9);
        ReducedOutcomes outcomes = ReducedOutcomes.of(table, 2, ReducedSolver.Progress.NONE);
        checks.chances(outcomes);
        checks.chancesGiveEquities(outcomes, 5000);
    }
}
