package org.pipwright.engine.measures;

/**
 * Effective pips (the idea is Walter Trice's, from memory; title and year not noted): the mean number of rolls a side needs to bear off, times the mean roll of 49/6 pips. What
 * they exceed the pip count by is wastage: pips lost to gaps, stacks and bearing off with large numbers.
 *
 * @param pips the pip count
 * @param rolls mean number of rolls to bear off
 */
public record EffectivePips(int pips, double rolls) {
    /** Mean pips of a roll, doubles counting four dice. */
    public static final double MEAN_ROLL = 49 / 6.0;

    /**
     * The effective pip count.
     *
     * @return mean rolls times 49/6
     */
    public double count() {
        return rolls * MEAN_ROLL;
    }

    /**
     * The wastage.
     *
     * @return effective pips less pips
     */
    public double wastage() {
        return count() - pips;
    }
}
