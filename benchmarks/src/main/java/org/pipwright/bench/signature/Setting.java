package org.pipwright.bench.signature;

import java.util.List;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.score.MatchScore;

/**
 * What the fixed questions are asked for.
 *
 * @param name what lines call it
 * @param stakes what is played for, seen from the side on roll
 */
record Setting(String name, Stakes stakes) {
    /** In each of them the cube is in the centre and shows this. */
    static final CubeState CUBE = CubeState.START;

    /** Money play with the Jacoby rule, and a score at which gammons count otherwise for both sides. */
    static final List<Setting> ALL = List.of(
            new Setting("money", MoneyStakes.USUAL),
            new Setting("match", new MatchStakes(new MatchScore(4, 2, false))));
}
