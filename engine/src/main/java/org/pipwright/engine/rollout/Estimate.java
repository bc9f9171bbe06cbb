package org.pipwright.engine.rollout;

/**
 * A mean of trials and how far it may be off.
 *
 * @param mean the mean
 * @param standardError of the mean, trials taken as independent; stratified dice make the true error a little smaller
 */
public record Estimate(double mean, double standardError) {}
