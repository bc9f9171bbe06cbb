package org.pipwright.cli.duel;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;
import java.util.function.LongSupplier;

/** Progress as plain lines for a log, at most two a minute. */
final class LineProgress implements Progress {
    private static final long INTERVAL = Duration.ofSeconds(30).toNanos();

    private static final double NANOS = 1e9;

    private final long all;
    private final String what;
    private final PrintWriter err;
    private final LongSupplier clock;
    private final long began;
    private long last;

    LineProgress(long all, String what, PrintWriter err) {
        this(all, what, err, System::nanoTime);
    }

    LineProgress(long all, String what, PrintWriter err, LongSupplier clock) {
        this.all = all;
        this.what = what;
        this.err = err;
        this.clock = clock;
        began = clock.getAsLong();
        last = began;
    }

    @Override
    public void reached(long games, String note) {
        long now = clock.getAsLong();
        if (now - last < INTERVAL) {
            return;
        }
        last = now;
        double rate = games / ((now - began) / NANOS);
        err.println(String.format(
                Locale.ROOT,
                "%d of %d %s, " + (rate < 10 ? "%.1f" : "%.0f") + " a second%s",
                games,
                all,
                what,
                rate,
                note.isEmpty() ? "" : ": " + note));
    }

    @Override
    public void done() {
        // Lines stay where they are.
    }
}
