package org.pipwright.bench.strength;

import java.io.Serializable;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/**
 * One line of a file of decisions.
 *
 * @param id number in the file, from 1
 * @param regime its kind
 * @param position the position before the play, as text
 * @param roll the roll
 * @param game the players of the game it comes from, the side on roll first
 */
public record Decision(int id, Regime regime, String position, String roll, String game) implements Serializable {
    Position board() {
        return PositionText.parse(position);
    }

    Roll dice() {
        return Roll.parse(roll);
    }
}
