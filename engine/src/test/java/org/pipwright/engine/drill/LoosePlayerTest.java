package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** Mostly the best play, never a bad one, and now and then another. */
class LoosePlayerTest {
    @Test
    void playsSensibly() {
        PlayRanker ranker = new PlayRanker(new LeaningEvaluator());
        LoosePlayer player = new LoosePlayer(new LeaningEvaluator());
        PlayGenerator legal = new PlayGenerator();
        RandomWalk walk = new RandomWalk(Position.FULL, 9);
        Dice ties = Dice.ofGame(1, 1);
        int choices = 0;
        int others = 0;
        for (Position position : walk.next(3000)) {
            Roll roll = walk.roll();
            legal.generate(position.toPlanes(), 0, roll.high(), roll.low());
            int chosen = player.choose(position.toPlanes(), 0, legal, ties);
            Position result = Position.ofPlanes(legal.results(), chosen * Planes.STRIDE);
            List<PlayVerdict> ranking = ranker.rank(position, roll);
            long close = ranking.stream().filter(each -> each.cost() > -0.1).count();
            PlayVerdict played = ranking.stream()
                    .filter(each -> each.play().result().equals(result))
                    .findFirst()
                    .orElseThrow();
            assertTrue(played.cost() > -0.1001, "a bad play of " + played.cost());
            if (close == 2) {
                choices++;
                others += played.cost() < 0 ? 1 : 0;
            }
        }
        // One time in four, and then each of the two with the same chance.
        assertTrue(choices > 200, "few choices: " + choices);
        assertEquals(1 / 8.0, (double) others / choices, 4 * Math.sqrt(1 / 8.0 * 7 / 8 / choices));
    }
}
