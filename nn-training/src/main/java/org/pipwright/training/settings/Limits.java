package org.pipwright.training.settings;

/**
 * When a run ends: at the first of the limits that it has.
 *
 * @param games games to play in all; 0 for no such limit
 * @param minutes minutes to train in all; 0 for no such limit
 */
public record Limits(long games, double minutes) {
    /**
     * Whether the run ends at all.
     *
     * @return false if there is no limit
     */
    public boolean any() {
        return games > 0 || minutes > 0;
    }
}
