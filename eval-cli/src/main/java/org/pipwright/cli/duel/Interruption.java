package org.pipwright.cli.duel;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Makes an interrupt from the keyboard (or another polite end of the process) stop a computation early: the process lives
 * on until what is known has been reported, or for ten seconds.
 */
public final class Interruption {
    private static final int PATIENCE_SECONDS = 10;

    /** What the process still waits for after a computation has failed: the line that says why. */
    private static volatile CountDownLatch unsaid = new CountDownLatch(0);

    private Interruption() {}

    /**
     * Computes and reports.
     *
     * @param body computes and then reports, all the way to flushed output: after an interrupt nothing that follows it
     *     runs; if it fails, the process waits for {@link #said()}
     * @param stop on an interrupt, called from another thread to end the computation soon
     */
    public static void during(Runnable body, Runnable stop) {
        CountDownLatch reported = new CountDownLatch(1);
        Thread hook = new Thread(() -> stopAndWait(stop, reported), "pipwright-interruption");
        Runtime.getRuntime().addShutdownHook(hook);
        unsaid = reported;
        try {
            body.run();
            reported.countDown();
        } finally {
            remove(hook);
        }
    }

    /** Tells that a failure of a computation, if there was one, has been printed. */
    public static void said() {
        unsaid.countDown();
    }

    private static void stopAndWait(Runnable stop, CountDownLatch reported) {
        stop.run();
        try {
            if (!reported.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                System.err.println("pipwright: stopped before anything could be reported");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void remove(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The process is ending already, as it should.
        }
    }
}
