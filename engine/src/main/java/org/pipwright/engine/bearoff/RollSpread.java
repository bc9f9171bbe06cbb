package org.pipwright.engine.bearoff;

import java.util.Arrays;

/** The distribution of a number of rolls, such as the rolls to bear off. Immutable. */
public final class RollSpread {
    private final double[] survival;

    /**
     * A distribution from its survival chances.
     *
     * @param survival entry k is the chance that more than k rolls are needed: from 1 down, in [0, 1]; chances after the
     *     last entry are 0
     * @throws IllegalArgumentException if an entry is outside [0, 1] or larger than the one before
     */
    public RollSpread(double... survival) {
        this.survival = survival.clone();
        double last = 1;
        for (double chance : survival) {
            if (!(chance >= 0 && chance <= last)) {
                throw new IllegalArgumentException(
                        "survival chances must fall from 1 to 0, but " + chance + " follows " + last);
            }
            last = chance;
        }
    }

    /**
     * Chance that more rolls are needed.
     *
     * @param rolls number of rolls, at least 0
     * @return chance that this many do not suffice, in [0, 1]
     */
    public double moreThan(int rolls) {
        return rolls < survival.length ? survival[rolls] : 0;
    }

    /**
     * Chance of a number of rolls.
     *
     * @param rolls number of rolls, at least 0
     * @return chance that exactly this many are needed, in [0, 1]
     */
    public double exactly(int rolls) {
        return (rolls == 0 ? 1 : moreThan(rolls - 1)) - moreThan(rolls);
    }

    /**
     * The distribution with one roll fewer in some cases, whatever the number; but none has fewer than all had before.
     *
     * @param share of the cases, in [0, 1]
     * @return a distribution whose mean is less by nearly this share, unless one number has all the chance
     */
    RollSpread sooner(double share) {
        double[] fewer = new double[survival.length];
        for (int k = 0; k < fewer.length; k++) {
            fewer[k] = moreThan(k) == 1 ? 1 : (1 - share) * moreThan(k) + share * moreThan(k + 1);
        }
        return new RollSpread(fewer);
    }

    /**
     * Fewest rolls with a chance above 0.
     *
     * @return at least 0
     */
    public int fewest() {
        int rolls = 0;
        while (moreThan(rolls) == 1) {
            rolls++;
        }
        return rolls;
    }

    /**
     * Most rolls with a chance above 0.
     *
     * @return at least 0
     */
    public int most() {
        int rolls = survival.length;
        while (rolls > 0 && survival[rolls - 1] == 0) {
            rolls--;
        }
        return rolls;
    }

    /**
     * Mean number of rolls: the sum of the survival chances.
     *
     * @return rolls, at least 0
     */
    public double mean() {
        return Arrays.stream(survival).sum();
    }

    /**
     * Variance of the number of rolls.
     *
     * @return square rolls, at least 0
     */
    public double variance() {
        // E[T^2] is the sum of (2k + 1) P(T > k).
        double square = 0;
        for (int k = 0; k < survival.length; k++) {
            square += (2 * k + 1) * survival[k];
        }
        double mean = mean();
        return Math.max(0, square - mean * mean);
    }

    /**
     * Chance to need no more rolls than another: what a side has that rolls first.
     *
     * @param other the other's distribution, independent of this one
     * @return P(this number is at most the other), in [0, 1]
     */
    public double atMost(RollSpread other) {
        double chance = 0;
        for (int k = 1; k <= survival.length; k++) {
            chance += exactly(k) * other.moreThan(k - 1);
        }
        return exactly(0) + chance;
    }

    /**
     * Chance to need fewer rolls than another: what a side has that rolls second.
     *
     * @param other the other's distribution, independent of this one
     * @return P(this number is less than the other), in [0, 1]
     */
    public double lessThan(RollSpread other) {
        double chance = 0;
        for (int k = 0; k <= survival.length; k++) {
            chance += exactly(k) * other.moreThan(k);
        }
        return chance;
    }
}
