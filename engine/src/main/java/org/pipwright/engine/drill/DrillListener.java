package org.pipwright.engine.drill;

/** Told how far a drill has come. Called by one thread at a time. */
@FunctionalInterface
public interface DrillListener {
    /**
     * Some more games, or decisions that were given, have been looked through.
     *
     * @param found questions so far
     * @param looked games or decisions so far
     */
    void reached(int found, long looked);
}
