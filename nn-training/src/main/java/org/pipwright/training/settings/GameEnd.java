package org.pipwright.training.settings;

/** Where games end. */
public enum GameEnd {
    /** At their end. */
    PLAYED,
    /** Where the exact bear-off tables know their chances. */
    TABLES
}
