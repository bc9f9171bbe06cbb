package org.pipwright.engine.judge;

import org.pipwright.engine.PublicApi;

/** Told how far a judge has come, and asked whether to go on. */
@FunctionalInterface
@PublicApi
public interface Progress {
    /** Lets everything run. */
    Progress NONE = (done, all) -> {};

    /**
     * A question has been answered. Called by one thread at a time.
     *
     * @param done questions answered so far
     * @param all all questions
     */
    void reached(int done, int all);

    /**
     * Asked again and again, by any thread: whether to end at once.
     *
     * @return whether to stop
     */
    default boolean stopped() {
        return false;
    }
}
