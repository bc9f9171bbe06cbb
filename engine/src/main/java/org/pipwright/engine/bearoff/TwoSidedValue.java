package org.pipwright.engine.bearoff;

/**
 * Exact values of a bear-off in which no gammon is possible, for the side on roll before it rolls or doubles. Equities are
 * for money with unlimited doubling, per unit of the present cube: a double that is passed is worth 1.
 *
 * @param win chance to win without a cube, in [0, 1]
 * @param centred equity if both sides may double, in [-1, 1]
 * @param mine equity if only the side on roll may double, in [-1, 1]
 * @param theirs equity if only the opponent may double, in [-1, 1]
 */
public record TwoSidedValue(double win, double centred, double mine, double theirs) {}
