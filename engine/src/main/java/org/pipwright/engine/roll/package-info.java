/** Dice: the 21 rolls, their probabilities, opening rolls and seeded dice. */
package org.pipwright.engine.roll;
