package org.pipwright.engine.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/** One object may play both sides: the points are then still those of the side that began. */
class SamePlayerTest {
    @Test
    void pointsAreThoseOfTheSideThatBegan() {
        GameLoop loop = new GameLoop();
        Player both = new PipLeader();
        int lost = 0;
        for (int game = 0; game < 50; game++) {
            int alone = play(loop, both, both, game);
            assertEquals(play(loop, new PipLeader(), new PipLeader(), game), alone);
            lost += alone < 0 ? 1 : 0;
        }
        assertTrue(lost > 10 && lost < 40, "games lost by the side that began: " + lost);
    }

    private static int play(GameLoop loop, Player first, Player second, int game) {
        Dice dice = Dice.ofGame(1, game);
        return loop.play(Position.start(), null, first, second, dice, Dice.ofGame(2, game), TurnListener.NONE);
    }
}
