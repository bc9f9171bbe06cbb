package org.pipwright.engine.judge;

import java.util.function.BooleanSupplier;
import org.pipwright.engine.PublicApi;

/** Told how far a judge has come, and asked whether to go on. */
@FunctionalInterface
@PublicApi
public interface Progress {
    /** Lets everything run. */
    Progress NONE = (done, all) -> {};

    /**
     * Tells nobody, and stops when it is told to.
     *
     * @param stopped asked again and again, by any thread: whether to end at once
     * @return the progress
     */
    static Progress until(BooleanSupplier stopped) {
        return new Progress() {
            @Override
            public void reached(int done, int all) {
                // Nobody counts.
            }

            @Override
            public boolean stopped() {
                return stopped.getAsBoolean();
            }
        };
    }

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
