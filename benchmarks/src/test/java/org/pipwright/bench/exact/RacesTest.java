package org.pipwright.bench.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.reduced.ReducedGame;

class RacesTest {
    /** Errors worked by hand: 0.1 and 0.3 of a win, 0.3 and 0 of a gammon won and 0.1 twice of one lost. */
    @Test
    void errors() {
        ChanceErrors errors = new ChanceErrors();
        errors.add(new Outcomes(0.3, 0.2, 0.1, 0.3, 0.1, 0), new Outcomes(0.5, 0, 0, 0.5, 0, 0));
        errors.add(new Outcomes(0.8, 0, 0, 0.2, 0, 0), new Outcomes(0.5, 0, 0, 0.4, 0.1, 0));
        // Win: root of (0.01 + 0.09) / 2; gammon: root of (0.09 + 0.01 + 0 + 0.01) / 4; backgammon: root of 0.01 / 4.
        assertEquals("0.2236, 0.3000 | 0.1658, 0.3000 | 0.0500, 0.1000", errors.toString());
    }

    @Test
    void racesAreWhatTheySay() {
        SplittableRandom random = new SplittableRandom(3);
        ReducedGame two = new ReducedGame(2);
        for (int n = 0; n < 500; n++) {
            race(RandomRace.of(random, 6, 1, 6), 6 * 6, 6 * 6);
            race(RandomRace.of(random, 8, 15, 15), 15 * 8, 15 * 8);
            race(RandomRace.gammonish(random, 8), 15 * 8, 15 * 8);
            race(RandomRace.ofTwo(random, two), 2 * 25, 2 * 25);
        }
    }

    private static void race(Position position, int mostPips, int opponentsMost) {
        assertFalse(position.contact() || position.finished());
        assertEquals(position.pips(), Math.min(position.pips(), mostPips));
        assertEquals(position.opponentPips(), Math.min(position.opponentPips(), opponentsMost));
    }
}
