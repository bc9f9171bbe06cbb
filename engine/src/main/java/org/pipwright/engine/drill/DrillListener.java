package org.pipwright.engine.drill;

/** Told how far a drill has come, and asked whether to go on. */
@FunctionalInterface
public interface DrillListener {
    /**
     * Some more games, or decisions that were given, have been looked through. Called by one thread at a time.
     *
     * @param found questions so far
     * @param looked games or decisions so far
     */
    void reached(int found, long looked);

    /**
     * Asked again and again, by any thread: whether to end soon, with what was found so far.
     *
     * @return whether to stop
     */
    default boolean stopped() {
        return false;
    }
}
