package org.pipwright.bench.exact;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.reduced.ReducedGame;
import org.pipwright.engine.reduced.ReducedSolver;
import org.pipwright.engine.reduced.ReducedTable;
import org.pipwright.engine.reduced.ReducedTableFile;

/** Tables of reduced games: read from a file if it is there, else solved and written to it. */
final class SolvedGames {
    /** Largest residual for 1, 2 and 3 checkers, in points per game. */
    private static final double[] RESIDUAL = {1e-12, 1e-12, 1e-9};

    private final PrintStream progress;

    SolvedGames(PrintStream progress) {
        this.progress = progress;
    }

    /** In the user's cache folder, with the other tables. */
    static Path defaultFile(int checkers) {
        return TableFolder.ofUser(System.getenv()).path().resolve("reduced-" + checkers + ".table");
    }

    ReducedTable table(int checkers, Path file, int threads) throws IOException {
        ReducedGame game = new ReducedGame(checkers);
        if (Files.exists(file)) {
            progress.println("reading and checking " + file + " ...");
            return ReducedTableFile.read(file, game, threads);
        }
        // Before the work, so that a folder that cannot be made is known at once.
        Files.createDirectories(file.toAbsolutePath().getParent());
        ReducedTable table = ReducedSolver.solve(game, threads, RESIDUAL[checkers - 1], this::line);
        ReducedTableFile.write(file, table);
        return table;
    }

    private void line(int sweep, boolean allPlays, double change) {
        progress.printf(
                Locale.ROOT,
                "sweep %d, %s: largest change %.1e%n",
                sweep,
                allPlays ? "all plays" : "the plays chosen before",
                change);
    }
}
