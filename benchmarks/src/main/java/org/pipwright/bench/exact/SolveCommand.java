package org.pipwright.bench.exact;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.reduced.ReducedTable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Solves a reduced game, keeps its table in a file and prints the equity of its start. */
@Command(name = "solve", description = "Solves a reduced game and prints the equity of its start.")
public final class SolveCommand extends BenchCommand {
    @Mixin
    private ReducedGameOptions game;

    @Mixin
    private ThreadsOption threadsOption;

    @Override
    protected void run() throws IOException {
        int checkers = game.checkers();
        int threads = threadsOption.count();
        Path file = game.file();
        long began = System.nanoTime();
        ReducedTable table = new SolvedGames(System.err).table(checkers, file, threads);
        out().printf(
                        Locale.ROOT,
                        "%d checkers, %d positions: start equity %.10f, residual %.1e, %.1f s on %d threads, table in %s%n",
                        checkers,
                        table.game().positions(),
                        table.equity(Position.start(checkers)),
                        table.residual(),
                        (System.nanoTime() - began) / 1e9,
                        threads,
                        file);
    }
}
