package org.pipwright.engine.parallel;

import java.io.Serializable;

/**
 * Something large that a {@link Workforce} sends once to each of its machines, however many tasks need it.
 *
 * @param <V> type of it
 */
@FunctionalInterface
public interface Shared<V extends Serializable> extends Serializable {
    /**
     * The thing itself, the same object for all threads of a machine; not to be changed.
     *
     * @return the thing
     */
    V get();

    /** Lets the machines forget it, where it was shared: no task asks for it any more. */
    default void drop() {
        // Most go when the work ends.
    }
}
