package org.pipwright.cli.drill;

import java.io.PrintWriter;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.pipwright.engine.drill.DrillListener;

/**
 * Shows how many exercises have been found: a bar on a terminal, else a line whenever there are more. Ends the search when it
 * is told to.
 */
public final class DrillProgress implements DrillListener, AutoCloseable {
    private static final int UPDATE_MILLIS = 250;

    private final int wanted;
    private final String source;
    private final PrintWriter err;
    private final ProgressBar bar;
    private int told;
    private volatile boolean stopped;

    /**
     * A display.
     *
     * @param wanted how many exercises are wanted
     * @param source what they come from, in the plural that an s makes, such as {@code games}
     * @param terminal whether standard error is a terminal
     * @param err where lines go
     */
    public DrillProgress(int wanted, String source, boolean terminal, PrintWriter err) {
        this.wanted = wanted;
        this.source = source;
        this.err = err;
        bar = terminal ? bar(wanted) : null;
    }

    private static ProgressBar bar(int wanted) {
        return new ProgressBarBuilder()
                .setTaskName("positions")
                .setInitialMax(wanted)
                .setStyle(ProgressBarStyle.ASCII)
                .setUpdateIntervalMillis(UPDATE_MILLIS)
                .hideEta()
                .clearDisplayOnFinish()
                .build();
    }

    @Override
    public void reached(int found, long looked) {
        String from = "from " + looked + " " + (looked == 1 ? source.substring(0, source.length() - 1) : source);
        if (bar != null) {
            bar.stepTo(found);
            bar.setExtraMessage(" " + from);
        } else if (found > told) {
            told = found;
            err.println(found + " of " + wanted + " positions so far, " + from);
        }
    }

    /** Ends the search soon; called from another thread. */
    public void stop() {
        stopped = true;
    }

    @Override
    public boolean stopped() {
        return stopped;
    }

    /** Takes the bar away. */
    @Override
    public void close() {
        if (bar != null) {
            bar.close();
        }
    }
}
