package org.pipwright.training.selfplay;

import org.pipwright.engine.roll.Dice;

/** Gives the target of a sample: the chances a network should learn. Serves one thread. */
@FunctionalInterface
public interface SampleTarget {
    /** The target of TD(lambda), as it is. */
    SampleTarget TD = (planes, at, dice, out, outAt) -> {};

    /**
     * Works it out.
     *
     * @param planes array that holds a position before the roll
     * @param at index of its first plane
     * @param dice the game's, for what is random about it
     * @param out holds the target of TD(lambda), six chances of the side on roll, to be kept or written over
     * @param outAt index of the first
     */
    void write(int[] planes, int at, Dice dice, float[] out, int outAt);
}
