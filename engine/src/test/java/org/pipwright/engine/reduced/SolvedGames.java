package org.pipwright.engine.reduced;

/** Games solved once for all tests. */
final class SolvedGames {
    private static ReducedTable two;

    private SolvedGames() {}

    /** The game with two checkers, to 1e-12. */
    static synchronized ReducedTable two() {
        if (two == null) {
            two = ReducedSolver.solve(new ReducedGame(2), 2, 1e-12, ReducedSolver.Progress.NONE);
        }
        return two;
    }
}
