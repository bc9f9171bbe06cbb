package org.pipwright.engine.rollout;

/**
 * Told of the standings as a rollout goes on.
 *
 * @param <R> what the standings are told in
 */
@FunctionalInterface
public interface RolloutListener<R> {
    /** A listener that lets every rollout run. */
    RolloutListener<Object> NONE = report -> true;

    /**
     * A round has been played.
     *
     * @param report the standings
     * @return whether to go on
     */
    boolean round(R report);

    /**
     * Asked before each roll of each game, by any thread: whether to drop the round that is being played and end at once.
     *
     * @return whether to stop
     */
    default boolean stopped() {
        return false;
    }
}
