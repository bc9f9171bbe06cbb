package org.pipwright.bench.strength;

import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Chooses a play for a decision. */
@FunctionalInterface
interface Chooser {
    Play choose(Position position, Roll roll);
}
