package org.pipwright.engine.parallel;

import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;

/** A thread that takes part in one job after the other. */
final class Helper<W> {
    private final W worker;
    private final Thread thread;
    private final AtomicReference<Job<W>> offered = new AtomicReference<>();
    private volatile boolean dismissed;

    Helper(W worker) {
        this.worker = worker;
        thread = new Thread(this::serve, "pipwright-crew");
        thread.setDaemon(true);
        thread.start();
    }

    /** Offers a job in place of whatever was offered before. */
    void offer(Job<W> job) {
        offered.set(job);
        LockSupport.unpark(thread);
    }

    void dismiss() {
        dismissed = true;
        LockSupport.unpark(thread);
    }

    private void serve() {
        while (!dismissed) {
            Pause.until(() -> offered.get() != null || dismissed);
            Job<W> job = offered.getAndSet(null);
            if (job != null) {
                job.help(worker);
            }
        }
    }
}
