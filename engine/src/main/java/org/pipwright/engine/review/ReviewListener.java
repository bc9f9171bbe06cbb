package org.pipwright.engine.review;

/** Told how far a review has come, and asked whether to go on. */
public interface ReviewListener {
    /** Lets every review run. */
    ReviewListener NONE = (done, all) -> {};

    /**
     * A turn has been judged. Called by one thread at a time.
     *
     * @param done turns judged so far
     * @param all all turns
     */
    void reached(int done, int all);

    /**
     * Asked now and then, by any thread: whether to end at once.
     *
     * @return whether to stop
     */
    default boolean stopped() {
        return false;
    }
}
