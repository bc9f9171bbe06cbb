package org.pipwright.training.settings;

/**
 * How strength is evaluated during a run.
 *
 * @param games games against the baseline each time
 * @param seconds seconds between two evaluations
 */
public record EvaluationSettings(int games, double seconds) {}
