package org.pipwright.bench.exact;

import java.nio.file.Path;
import org.pipwright.bench.Within;
import picocli.CommandLine.Option;

/** Which reduced game, and where its solution is kept. */
final class ReducedGameOptions {
    @Option(names = "--checkers", paramLabel = "N", description = "Checkers a side (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 3)
    private int checkers = 2;

    @Option(
            names = "--table",
            paramLabel = "FILE",
            description = "The solution's file (default: one in the user's cache folder).")
    private Path table;

    int checkers() {
        return checkers;
    }

    Path file() {
        return table == null ? SolvedGames.defaultFile(checkers) : table;
    }
}
