package org.pipwright.training.settings;

/**
 * Which positions become samples.
 *
 * @param positions those that may
 * @param share share of them, 0 to 1, that do
 */
public record SampleSettings(SampledPositions positions, double share) {}
