package org.pipwright.engine.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

/** Facts that every player knows. */
class TradeFactsOfScoringTest {
    @Test
    void startHasFifteenCheckersAnd167Pips() {
        Position start = Position.start();
        assertEquals(15, start.checkers());
        assertEquals(48, 24 * start.count(24));
        assertEquals(65, 13 * start.count(13));
        assertEquals(24, 8 * start.count(8));
        assertEquals(30, 6 * start.count(6));
        assertEquals(167, start.pips());
        assertEquals(167, start.opponentPips());
        assertTrue(start.contact());
    }

    /** With nothing on the 6 point, the 6 of a 6-2 must take a checker off from the highest point. */
    @Test
    void sixMustBearOffFromTheHighestPoint() {
        Position position = PositionText.parse("3@2 4@4 3@5 / 10@1");
        PlayGenerator generator = new PlayGenerator();
        int size = generator.generate(position.toPlanes(), 0, 6, 2);
        assertTrue(size > 1, "the 2 leaves a choice");
        for (int i = 0; i < size; i++) {
            Position result = Position.ofPlanes(generator.results(), 8 * i);
            assertTrue(result.borneOff() > position.borneOff());
            assertTrue(result.count(5) < position.count(5));
        }
    }

    @Test
    void gammonWithTheCubeAtFourIsEightPoints() {
        assertEquals(8, GameResult.GAMMON.points(4));
    }
}
