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
}
