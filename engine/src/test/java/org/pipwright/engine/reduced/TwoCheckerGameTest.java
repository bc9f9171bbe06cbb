package org.pipwright.engine.reduced;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Position;

/** The game with two checkers a side, solved here, against values from separate programs. */
class TwoCheckerGameTest {
    private static ReducedTable table;
    private static GameChecks checks;

    @TempDir
    Path folder;

    @BeforeAll
    static void solve() {
        table = SolvedGames.two();
        checks = new GameChecks(table, "two-checker");
    }

    @Test
    void residualIsAsAskedFor() {
        assertTrue(table.residual() < 1e-12, "residual " + table.residual());
        checks.fixedPoint(2000, 1e-12);
    }

    @Test
    void equitiesAreTheKnownOnes() {
        checks.equities(1e-8);
        checks.openings(1e-8);
        assertEquals(0.1522439125, table.equity(Position.start(2)), 1e-9);
        assertEquals(0.1133299673, checks.openingEquity(), 1e-9);
    }

    @Test
    void chancesAreTheKnownOnesAndGiveTheEquities() {
        ReducedOutcomes outcomes = ReducedOutcomes.of(table, 2, ReducedSolver.Progress.NONE);

        checks.chances(outcomes);
        checks.chancesGiveEquities(outcomes, 5000);
    }

    @Test
    void fileHoldsTheSameTable() throws IOException {
        Path file = folder.resolve("two");
        ReducedTableFile.write(file, table);

        ReducedTable read = ReducedTableFile.read(file, new ReducedGame(2), 2);

        assertArrayEquals(table.values(), read.values());
        assertTrue(read.residual() < 1e-12, "residual " + read.residual());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 9, 12, 13, 500_000, 852_435})
    void damageIsNoticed(int at) throws IOException {
        Path file = folder.resolve("two");
        ReducedTableFile.write(file, table);
        byte[] bytes = Files.readAllBytes(file);
        bytes[at] ^= 1;
        Files.write(file, bytes);

        assertThrows(InvalidTableException.class, () -> ReducedTableFile.read(file, new ReducedGame(2), 1));
    }

    @ParameterizedTest
    @ValueSource(ints = {-852_436, -852_430, -1, 1})
    void wrongLengthIsNoticed(int extra) throws IOException {
        Path file = folder.resolve("two");
        ReducedTableFile.write(file, table);
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, bytes.length + extra));

        assertThrows(InvalidTableException.class, () -> ReducedTableFile.read(file, new ReducedGame(2), 1));
    }

    @Test
    void valuesThatSolveNothingAreNoticed() throws IOException {
        double[] wrong = table.values().clone();
        wrong[table.game().cell(Position.start(2))] += 0.001;
        Path file = folder.resolve("two");
        ReducedTableFile.write(file, new ReducedTable(table.game(), wrong, table.choices(), 0));

        assertThrows(InvalidTableException.class, () -> ReducedTableFile.read(file, new ReducedGame(2), 1));
    }

    @Test
    void fileOfAnotherGameIsNoticed() throws IOException {
        Path file = folder.resolve("two");
        ReducedTableFile.write(file, table);

        assertThrows(InvalidTableException.class, () -> ReducedTableFile.read(file, new ReducedGame(1), 1));
    }
}
