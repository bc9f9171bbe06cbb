package org.pipwright.engine.reduced;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The game with one checker a side against plain value iteration, one position at a time. */
class OneCheckerGameTest {
    private static final ReducedGame GAME = new ReducedGame(1);

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void isWhatPlainValueIterationFinds(int threads) {
        ReducedTable table = ReducedSolver.solve(GAME, threads, 1e-13, ReducedSolver.Progress.NONE);
        double[] plain = plainValues();

        for (int cell = 0; cell < GAME.cells(); cell++) {
            if (GAME.unfinished(cell)) {
                assertEquals(plain[cell], table.equity(PlayByPlay.position(GAME, cell)), 1e-12);
            }
        }
    }

    private static double[] plainValues() {
        double[] values = GAME.freshValues();
        double change = 1;
        while (change > 1e-14) {
            double[] next = values.clone();
            change = 0;
            for (int cell = 0; cell < values.length; cell++) {
                if (GAME.unfinished(cell)) {
                    double[] old = values;
                    next[cell] = PlayByPlay.backup(PlayByPlay.position(GAME, cell), p -> old[GAME.cell(p)]);
                    change = Math.max(change, Math.abs(next[cell] - old[cell]));
                }
            }
            values = next;
        }
        return values;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-20, Double.NaN})
    void refusesAResidualThatCannotBeReached(double residual) {
        assertThrows(
                IllegalArgumentException.class,
                () -> ReducedSolver.solve(GAME, 1, residual, ReducedSolver.Progress.NONE));
    }

    @Test
    void refusesNoThreads() {
        assertThrows(
                IllegalArgumentException.class, () -> ReducedSolver.solve(GAME, 0, 1e-9, ReducedSolver.Progress.NONE));
    }
}
