package org.pipwright.training.settings;

/** Which positions of a game of self-play may become samples. */
public enum SampledPositions {
    /** Every position before a roll. */
    ALL,
    /** Those whose roll left a choice of plays. */
    CHOICES,
    /** Those of one side, drawn anew for each game. */
    ONE_SIDE
}
