package org.pipwright.engine.bearoff;

/**
 * What the two-sided table says of a race, for the side on roll, in points per unit of the present cube.
 *
 * @param value before the roll, with the right cube action
 * @param doubling of the choices before it
 */
public record ExactRace(TwoSidedValue value, DoublingValue doubling) {}
