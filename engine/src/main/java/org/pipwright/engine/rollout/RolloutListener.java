package org.pipwright.engine.rollout;

/** Told of the standings as a rollout goes on. */
@FunctionalInterface
public interface RolloutListener {
    /** A listener that lets every rollout run. */
    RolloutListener NONE = report -> true;

    /**
     * A round has been played.
     *
     * @param report the standings
     * @return whether to go on
     */
    boolean round(RolloutReport report);

    /**
     * Asked before each roll of each game, by any thread: whether to drop the round that is being played and end at once.
     *
     * @return whether to stop
     */
    default boolean stopped() {
        return false;
    }
}
