package org.pipwright.engine.network;

/**
 * One thread's way of evaluating with a network: a position from scratch, or many siblings that differ little from one
 * position. Both give the chances of the side on roll.
 */
public interface SiblingEvaluation {
    /**
     * The six chances of a position, computed from scratch.
     *
     * @param planes array that holds the unfinished position, as {@link org.pipwright.engine.position.Planes} describes
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of six chances of the side on roll
     */
    void evaluate(int[] planes, int at, float[] out, int outAt);

    /**
     * Sets the position that siblings are compared with.
     *
     * @param planes array that holds a position; it need not be one that could come up
     * @param at index of its first plane
     */
    void begin(int[] planes, int at);

    /**
     * The six chances of positions that differ little from the one given to {@link #begin}. What a position gets does not
     * depend on the others.
     *
     * @param planes array that holds the unfinished positions one after another
     * @param count number of positions
     * @param out where to write six chances a position, for the side on roll
     */
    void evaluateSiblings(int[] planes, int count, float[] out);
}
