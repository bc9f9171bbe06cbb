package org.pipwright.cli.command;

import java.io.PrintWriter;
import org.pipwright.cli.duel.Progress;

/** Shows how far a review has come, and ends it when it is told to. */
final class ReviewProgress implements org.pipwright.engine.judge.Progress {
    private final PrintWriter err;
    private Progress progress;
    private volatile boolean stopped;
    private int done;
    private int all;

    ReviewProgress(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void reached(int turns, int ofAll) {
        if (progress == null) {
            progress = Progress.of(ofAll, "turns", err);
        }
        done = turns;
        all = ofAll;
        progress.reached(turns, "");
    }

    /** Takes the display away. */
    void close() {
        if (progress != null) {
            progress.done();
        }
    }

    /** Ends the review soon; called from another thread. */
    void stop() {
        stopped = true;
    }

    @Override
    public boolean stopped() {
        return stopped;
    }

    /** Where it was stopped. */
    String reached() {
        return done == 0 ? "before the first turn was judged" : "after " + done + " of " + all + " turns";
    }
}
