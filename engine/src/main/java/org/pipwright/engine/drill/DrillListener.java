package org.pipwright.engine.drill;

/** Told how far a drill has come. Called by one thread at a time. */
@FunctionalInterface
public interface DrillListener {
    /**
     * Some more games have been looked through.
     *
     * @param found questions so far
     * @param games games so far
     */
    void reached(int found, long games);
}
