package org.pipwright.training.selfplay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/** Starts of games of self-play. */
class StartsTest {
    private static final int GAMES = 2_000;

    @ParameterizedTest
    @ValueSource(ints = {15, 3, 2, 1})
    void randomStartsAreUnfinishedPositions(int checkers) {
        Position usual = Position.start(checkers);
        Starts starts = new Starts(usual, 1);
        Set<Position> met = new HashSet<>();
        for (int game = 0; game < GAMES; game++) {
            Position start = starts.choose(Dice.ofGame(4, game));
            start.checkConsistency();
            assertFalse(start.finished());
            assertEquals(checkers, start.checkers());
            met.add(start);
        }
        assertTrue(met.size() > (checkers == 15 ? GAMES * 9 / 10 : 20), met.size() + " different starts");
    }

    @Test
    void shareIsKept() {
        Starts starts = new Starts(Position.start(), 0.3);
        int varied = 0;
        for (int game = 0; game < GAMES; game++) {
            varied += starts.choose(Dice.ofGame(5, game)).equals(Position.start()) ? 0 : 1;
        }
        // Four standard deviations of a binomial count.
        assertEquals(0.3 * GAMES, varied, 4 * Math.sqrt(GAMES * 0.3 * 0.7));
    }

    /** No varied starts, no dice used: older runs keep their games. */
    @Test
    void noShareTakesNoDice() {
        Dice dice = Dice.ofGame(6, 0);
        assertEquals(Position.start(), new Starts(Position.start(), 0).choose(dice));
        assertEquals(Dice.ofGame(6, 0).next(), dice.next());
    }
}
