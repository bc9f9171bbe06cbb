package org.pipwright.engine.evaluation;

import org.pipwright.engine.position.Planes;

/**
 * Where a game need not be played on because its outcome is known: self-play, lookahead and rollouts ask it before each
 * roll and take its chances for the rest of the game. An instance serves one thread, since it may keep buffers.
 */
@FunctionalInterface
public interface Horizon {
    /** Knows nothing: every game is played to its end. */
    Horizon NONE = (planes, at, out, outAt) -> false;

    /**
     * Writes the chances of an unfinished position before the roll if they are known.
     *
     * @param planes array that holds the position, as {@link Planes} describes
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of six chances, for the side on roll, in the order of {@link Outcomes}
     * @return whether they are known; if not, nothing was written
     */
    boolean write(int[] planes, int at, float[] out, int outAt);
}
