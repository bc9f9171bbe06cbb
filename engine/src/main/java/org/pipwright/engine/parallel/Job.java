package org.pipwright.engine.parallel;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;

/**
 * One run of a crew. Helpers enter while it is open and leave when no task is left; whoever started it closes it and waits
 * for those inside.
 */
final class Job<W> {
    /** Added to the number of helpers inside once nobody may enter any more. */
    private static final int CLOSED = 1 << 30;

    private final int count;
    private final Crew.Work<W> work;
    private final Thread starter = Thread.currentThread();
    private final AtomicInteger next = new AtomicInteger();
    private final AtomicInteger inside = new AtomicInteger();
    private volatile Throwable failure;

    Job(int count, Crew.Work<W> work) {
        this.count = count;
        this.work = work;
    }

    /** A helper's part, if it comes in time. */
    void help(W worker) {
        if (inside.getAndUpdate(n -> n < CLOSED ? n + 1 : n) >= CLOSED) {
            return;
        }
        drain(worker);
        if (inside.decrementAndGet() == CLOSED) {
            LockSupport.unpark(starter);
        }
    }

    /** Does tasks until none is left. After a failure none is begun any more. */
    void drain(W worker) {
        try {
            for (int task = next.getAndIncrement(); task < count; task = next.getAndIncrement()) {
                work.run(worker, task);
            }
        } catch (RuntimeException | Error e) {
            failure = e;
            next.set(count);
        }
    }

    /** Waits for the helpers inside, even if this thread is interrupted: what they work on is not free before. */
    void finish() {
        if (inside.addAndGet(CLOSED) != CLOSED) {
            Pause.until(() -> inside.get() == CLOSED);
        }
        if (failure instanceof RuntimeException) {
            throw (RuntimeException) failure;
        }
        if (failure != null) {
            throw (Error) failure;
        }
    }
}
