package org.pipwright.training.selfplay;

import java.util.Locale;

/** Which positions of a game of self-play may become samples. */
public enum SampledPositions {
    /** Every position before a roll. */
    ALL,
    /** Those whose roll left a choice of plays. */
    CHOICES,
    /** Those of one side, drawn anew for each game. */
    ONE_SIDE;

    /**
     * By its name in a settings file.
     *
     * @param name for instance {@code one-side}
     * @return which positions
     * @throws IllegalArgumentException if there is no such name
     */
    public static SampledPositions named(String name) {
        return valueOf(name.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
