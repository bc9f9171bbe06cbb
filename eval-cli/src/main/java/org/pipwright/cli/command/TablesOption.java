package org.pipwright.cli.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.TableNotes;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import picocli.CommandLine.Option;

/** Where the exact tables of the bear-off are kept. */
final class TablesOption {
    @Option(
            names = "--cache",
            paramLabel = "FOLDER",
            description = "Where exact tables are kept. Default: the folder that " + TableFolder.VARIABLE
                    + " names, else pipwright in the user's cache folder.")
    private String cache;

    TableFolder folder() {
        try {
            return cache == null ? TableFolder.ofUser(System.getenv()) : new TableFolder(Path.of(cache));
        } catch (InvalidPathException e) {
            throw new UserError("'" + e.getInput() + "' is not a folder name: " + e.getReason());
        }
    }

    /** The standard tables, opened or built when the first position they cover is met. */
    EndgameTables standard(int threads, Console console) {
        return EndgameTables.standard(folder(), threads, new TableNotes(console));
    }

    /** The largest tables there are, likewise. */
    EndgameTables largest(Console console) {
        return EndgameTables.largest(folder(), Runtime.getRuntime().availableProcessors(), new TableNotes(console));
    }
}
