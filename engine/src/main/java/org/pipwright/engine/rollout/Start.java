package org.pipwright.engine.rollout;

import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;

/**
 * Where the games of one candidate begin, and whose results are counted.
 *
 * @param position the position before the first roll; it may be finished
 * @param counted whether results count for the side on roll there, or else for the other side
 */
record Start(Position position, boolean counted) {
    static Start beforeRoll(Position position) {
        return new Start(position, true);
    }

    static Start after(Play play) {
        return new Start(play.next(), false);
    }
}
