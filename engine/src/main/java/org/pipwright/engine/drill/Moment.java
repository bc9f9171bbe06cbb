package org.pipwright.engine.drill;

import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * One turn of a game.
 *
 * @param position the position before the roll, seen from the side on roll
 * @param roll what was then thrown
 */
record Moment(Position position, Roll roll) {}
