package org.pipwright.cli.command;

import java.io.PrintWriter;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.bearoff.TableProgress;

/** Tells on standard error when a table has to be built before an answer can be given. */
final class TableNotes implements TableListener {
    private final PrintWriter err;

    TableNotes(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void note(String line) {
        err.println("pipwright: " + line);
    }

    @Override
    public TableProgress building(String table) {
        note("building the " + table + ", once");
        return TableProgress.NONE;
    }
}
