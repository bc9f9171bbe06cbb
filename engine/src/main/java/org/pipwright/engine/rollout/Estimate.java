package org.pipwright.engine.rollout;

/**
 * A mean of trials and how far it may be off.
 *
 * @param mean the mean
 * @param standardError of the mean, with the even spread of the first two throws taken into account from 288 trials
 *     on
 */
public record Estimate(double mean, double standardError) {}
