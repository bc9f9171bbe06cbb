package org.pipwright.training.report;

/**
 * Points per game against the run's rival, in paired games: each sequence of dice is played twice with sides swapped.
 * With variance reduction where the rival is a net.
 *
 * @param games games played
 * @param points mean points per game of the model
 * @param error standard error of the mean, over pairs
 */
public record Evaluation(int games, double points, double error) {}
