package org.pipwright.cli.report;

import org.pipwright.cli.console.Console;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.bearoff.TableProgress;

/** Says on standard error which table is being built, and on a terminal how far it is. */
public final class TableNotes implements TableListener {
    private final Console console;

    /**
     * Notes for a run.
     *
     * @param console where to write
     */
    public TableNotes(Console console) {
        this.console = console;
    }

    @Override
    public void note(String line) {
        console.err().println("pipwright: " + line);
    }

    @Override
    public TableProgress building(String table) {
        console.err().println("building the " + table + ", once ...");
        return Boolean.getBoolean("pipwright.terminal") ? new Percent() : TableProgress.NONE;
    }

    /** Rewrites one line with each per cent, and clears it at the end. */
    private final class Percent implements TableProgress {
        private int last = -1;

        @Override
        public void done(double share) {
            int percent = (int) (100 * share);
            if (percent != last) {
                last = percent;
                console.err().print(percent < 100 ? "\r" + percent + " %" : "\r     \r");
                console.err().flush();
            }
        }
    }
}
