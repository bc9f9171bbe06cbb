package org.pipwright.training.settings;

/**
 * How the networks learn.
 *
 * @param learner what fits them
 * @param round games per round
 * @param batch samples a step
 * @param epochs passes over the samples of a round
 * @param staleness rounds that the net which plays is behind
 * @param average steps that weights are averaged over; 0 for none
 * @param lambda of TD(lambda)
 * @param rate learning rate
 */
public record LearningSettings(
        LearnerKind learner, int round, int batch, int epochs, int staleness, long average, Fall lambda, Fall rate) {}
