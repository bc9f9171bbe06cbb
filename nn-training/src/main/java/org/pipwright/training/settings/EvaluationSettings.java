package org.pipwright.training.settings;

/**
 * How strength is evaluated during a run.
 *
 * @param rival {@value #PIPS}, or the name or the file of a net
 * @param games games against the rival each time
 * @param seconds seconds between two evaluations
 */
public record EvaluationSettings(String rival, int games, double seconds) {
    /** The baseline that needs no net. */
    public static final String PIPS = "pips";

    /**
     * Whether the rival is a net.
     *
     * @return false if it is the baseline
     */
    public boolean byNet() {
        return !rival.equals(PIPS);
    }
}
