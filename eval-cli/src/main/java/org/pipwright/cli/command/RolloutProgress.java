package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;

/** Tells how far a rollout has come, with the standings, a line now and then; and ends it when it is told to. */
final class RolloutProgress implements RolloutListener {
    private static final long INTERVAL = Duration.ofSeconds(5).toNanos();

    private static final int DECIMALS = 3;

    /** Errors below that are rounding. */
    private static final double MIN_ERROR = 1e-9;

    private final PrintWriter err;
    private final Function<RolloutReport, String> words;
    private long last = System.nanoTime();
    private volatile boolean stopped;

    /** Progress on {@code err}; {@code words} puts standings into a line. */
    RolloutProgress(PrintWriter err, Function<RolloutReport, String> words) {
        this.err = err;
        this.words = words;
    }

    /** Such a line, from what it says of each candidate. */
    static String line(int trials, int most, Stream<String> standings) {
        return trials + " of " + most + " games: " + standings.collect(Collectors.joining("; "));
    }

    /** What it says of a candidate. */
    static String standing(String name, Estimate value) {
        return (name.isEmpty() ? "" : name + " ")
                + number("%+.", value.mean(), value.standardError())
                + " (error " + number("%.", value.standardError(), value.standardError()) + ")";
    }

    /** A number with three decimals, or as many more as show the first digit of its error. */
    private static String number(String start, double number, double error) {
        int decimals = error < MIN_ERROR ? DECIMALS : Math.max(DECIMALS, (int) Math.ceil(-Math.log10(error)));
        return String.format(Locale.ROOT, start + decimals + "f", number);
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
        long now = System.nanoTime();
        if (now - last >= INTERVAL) {
            last = now;
            err.println(words.apply(report));
        }
        return true;
    }
}
