package org.pipwright.engine.parallel;

import java.io.Serializable;
import java.util.Iterator;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;

/**
 * Whoever does tasks for this process elsewhere, as a rule the machines of a cluster. Who does a task, and whether it had to
 * be done twice because a machine was lost, does not show: results come in the order of the tasks. To be asked from one
 * thread at a time.
 */
public interface Workforce extends AutoCloseable {
    /**
     * How many tasks it does at a time.
     *
     * @return at least 1; it may change when machines come and go
     */
    int size();

    /**
     * Gets something ready to be sent once to each machine.
     *
     * @param value what trades will need; not to be changed any more
     * @param <V> type of it
     * @return what trades are given instead
     */
    <V extends Serializable> Shared<V> share(V value);

    /**
     * Has tasks done until there are no more, enough is known, or it is told to stop. Some that come after the last one that
     * was taken may be done in vain.
     *
     * @param trade how to do a task
     * @param tasks the tasks, in the order in which results are wanted
     * @param taken given each result, in that order, on the caller's thread; whether more are wanted
     * @param stopped asked again and again whether to end at once
     * @param <T> type of the tasks
     * @param <R> type of what comes of one
     * @throws IllegalArgumentException if a task is refused by who does it
     * @throws WorkforceException if the work cannot be done
     */
    <T extends Serializable, R extends Serializable> void inOrder(
            Trade<T, R> trade, Iterator<T> tasks, Predicate<R> taken, BooleanSupplier stopped);

    /** Lets the machines go. */
    @Override
    void close();
}
