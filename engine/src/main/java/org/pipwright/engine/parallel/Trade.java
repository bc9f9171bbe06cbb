package org.pipwright.engine.parallel;

import java.io.Serializable;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * What a {@link Workforce} has to know to do a kind of tasks. It travels to where the work is done; what is large in it, such
 * as a net, is better {@link Shared}.
 *
 * @param <T> type of the tasks
 * @param <R> type of what comes of one
 */
@FunctionalInterface
public interface Trade<T extends Serializable, R extends Serializable> extends Serializable {
    /**
     * Makes a worker for one thread. All workers of a trade do a task alike, bit for bit, on the same kind of processor.
     *
     * @return the worker
     */
    Worker<T, R> hire();

    /**
     * Classes whose jars a worker needs: this one's, and those of what it was given by others.
     *
     * @return at least one
     */
    default List<Class<?>> classes() {
        return List.of(getClass());
    }

    /**
     * Does one task after another.
     *
     * @param <T> type of the tasks
     * @param <R> type of what comes of one
     */
    @FunctionalInterface
    interface Worker<T extends Serializable, R extends Serializable> extends AutoCloseable {
        /**
         * Does a task.
         *
         * @param task the task
         * @param stopped asked now and then whether to give up, by a cancellation
         * @return what comes of it
         * @throws CancellationException if it was told to stop
         */
        R work(T task, BooleanSupplier stopped);

        @Override
        default void close() {
            // Most have nothing to let go.
        }
    }
}
