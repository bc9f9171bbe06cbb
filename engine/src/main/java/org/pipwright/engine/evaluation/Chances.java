package org.pipwright.engine.evaluation;

/** Six chances in an array, for hot loops; the order is that of {@link Outcomes}. */
public final class Chances {
    private static final int HALF = Outcomes.COUNT / 2;

    private Chances() {}

    /**
     * Turns the chances of one side into those of the other, in place.
     *
     * @param chances array that holds them
     * @param at index of the first of six
     */
    public static void swap(float[] chances, int at) {
        for (int k = at; k < at + HALF; k++) {
            float win = chances[k];
            chances[k] = chances[k + HALF];
            chances[k + HALF] = win;
        }
    }

    /**
     * Cubeless equity.
     *
     * @param chances array that holds the chances
     * @param at index of the first of six
     * @return points per game for the side whose chances they are, between -3 and 3
     */
    public static float equity(float[] chances, int at) {
        return chances[at]
                + 2 * chances[at + 1]
                + 3 * chances[at + 2]
                - chances[at + 3]
                - 2 * chances[at + 4]
                - 3 * chances[at + 5];
    }

    /**
     * Cubeless equity, with all the digits of doubles.
     *
     * @param chances array that holds the chances; with luck taken off they may lie a little outside 0 to 1
     * @param at index of the first of six
     * @return points per game for the side whose chances they are
     */
    public static double equity(double[] chances, int at) {
        return chances[at]
                + 2 * chances[at + 1]
                + 3 * chances[at + 2]
                - chances[at + 3]
                - 2 * chances[at + 4]
                - 3 * chances[at + 5];
    }
}
