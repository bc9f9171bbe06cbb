package org.pipwright.bench.exact;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.reduced.ReducedTable;

/** Solves a reduced game, keeps its table in a file and prints the equity of its start. */
public final class SolveMain {
    private SolveMain() {}

    public static void main(String[] args) {
        Main.run(args, SolveMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options = new Options(args, Set.of("--checkers", "--table", "--threads"), Set.of());
        int checkers = options.number("--checkers", 2, 1, 3);
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        Path file = options.text("--table").map(Path::of).orElse(SolvedGames.defaultFile(checkers));
        long began = System.nanoTime();
        ReducedTable table = new SolvedGames(System.err).table(checkers, file, threads);
        System.out.printf(
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
