package org.pipwright.training.cuda;

import java.util.function.LongSupplier;

/** Seconds of training, those of earlier processes included. */
final class RunClock {
    private final LongSupplier nanos;
    private final double before;
    private final long began;

    /**
     * A clock that begins now.
     *
     * @param nanos rises by a billion a second
     * @param before seconds so far
     */
    RunClock(LongSupplier nanos, double before) {
        this.nanos = nanos;
        this.before = before;
        began = nanos.getAsLong();
    }

    double seconds() {
        return before + (nanos.getAsLong() - began) / 1e9;
    }
}
