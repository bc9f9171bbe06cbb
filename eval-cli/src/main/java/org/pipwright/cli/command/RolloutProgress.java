package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;

/** Tells how far a rollout has come, with the standings, a line now and then; and ends it when it is told to. */
final class RolloutProgress implements RolloutListener {
    private static final long INTERVAL = Duration.ofSeconds(5).toNanos();

    private final PrintWriter err;
    private final int trials;
    private final List<Play> candidates;
    private final LongSupplier clock;
    private long last;
    private volatile boolean stopped;

    RolloutProgress(PrintWriter err, int trials, List<Play> candidates) {
        this(err, trials, candidates, System::nanoTime);
    }

    RolloutProgress(PrintWriter err, int trials, List<Play> candidates, LongSupplier clock) {
        this.err = err;
        this.trials = trials;
        this.candidates = candidates;
        this.clock = clock;
        last = clock.getAsLong();
    }

    /** Ends the rollout soon; called from another thread. */
    void stop() {
        stopped = true;
    }

    @Override
    public boolean stopped() {
        return stopped;
    }

    @Override
    public boolean round(RolloutReport report) {
        long now = clock.getAsLong();
        if (now - last >= INTERVAL) {
            last = now;
            show(report);
        }
        return true;
    }

    private void show(RolloutReport report) {
        String standings = report.lines().stream().map(this::standing).collect(Collectors.joining("; "));
        err.println(report.trials() + " of " + trials + " games: " + standings);
    }

    private String standing(RolloutLine line) {
        String name = candidates.isEmpty() ? "" : candidates.get(line.candidate()) + " ";
        return name
                + String.format(
                        Locale.ROOT,
                        "%+.3f (error %.3f)",
                        line.equity().mean(),
                        line.equity().standardError());
    }
}
