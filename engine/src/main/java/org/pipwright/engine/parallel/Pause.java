package org.pipwright.engine.parallel;

import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waiting that is fast when it is short: looks again and again for a moment, then sleeps until unparked. */
final class Pause {
    /** About what it costs to put a thread to sleep and wake it up. */
    private static final long WATCH_NANOS = 50_000;

    private static final int LOOKS_BETWEEN_CLOCKS = 32;

    private Pause() {}

    /** Returns once a condition holds; whoever makes it true must then unpark this thread. An interrupt is kept for later. */
    static void until(BooleanSupplier condition) {
        boolean interrupted = false;
        while (!watch(condition)) {
            LockSupport.park();
            interrupted |= Thread.interrupted();
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private static boolean watch(BooleanSupplier condition) {
        long begin = System.nanoTime();
        do {
            for (int look = 0; look < LOOKS_BETWEEN_CLOCKS; look++) {
                if (condition.getAsBoolean()) {
                    return true;
                }
                Thread.onSpinWait();
            }
        } while (System.nanoTime() - begin < WATCH_NANOS);
        return condition.getAsBoolean();
    }
}
