package org.pipwright.engine.bearoff;

/**
 * Exact equities of the choices before a roll in a bear-off without gammons, for the side on roll, for money, per unit of
 * the present cube. To double and be passed is worth 1; the opponent's best answer to a double is to pass if
 * {@code doubleTake} is above 1.
 *
 * @param noDoubleCentred equity of rolling with the cube in the centre
 * @param noDoubleMine equity of rolling with the cube on the own side
 * @param doubleTake equity of doubling if it is taken, in [-2, 2]
 */
public record DoublingValue(double noDoubleCentred, double noDoubleMine, double doubleTake) {}
