package org.pipwright.engine.drill;

import java.util.function.BiPredicate;

/** Ends a search when something is so, or when it is told to. */
final class StopWhen implements DrillListener {
    private final BiPredicate<Integer, Long> enough;
    private volatile boolean stopped;

    /** {@code enough} is asked about what was found and how many were looked at. */
    StopWhen(BiPredicate<Integer, Long> enough) {
        this.enough = enough;
    }

    void stop() {
        stopped = true;
    }

    @Override
    public void reached(int found, long looked) {
        stopped |= enough.test(found, looked);
    }

    @Override
    public boolean stopped() {
        return stopped;
    }
}
