package org.pipwright.training.settings;

/** The first roll of a game. */
public enum OpeningRoll {
    /** As the game is played: never a double. */
    NO_DOUBLES,
    /** Any roll. */
    ANY
}
