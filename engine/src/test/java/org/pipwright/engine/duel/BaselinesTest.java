package org.pipwright.engine.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** What the baselines prefer, and that each of them is better than chance. */
class BaselinesTest {
    private static String chosen(String name, String position, String roll) {
        Position start = PositionText.parse(position);
        Roll rolled = Roll.parse(roll);
        PlayGenerator legal = new PlayGenerator();
        int[] planes = start.toPlanes();
        legal.generate(planes, 0, rolled.high(), rolled.low());
        int index = Baselines.named(name).orElseThrow().players().get().choose(planes, 0, legal, Dice.ofGame(1, 1));
        return Plays.to(start, rolled, legal.results(), index * Planes.STRIDE).toString();
    }

    @ParameterizedTest
    @CsvSource({
        // Leaves no shot, or as few as can be.
        "racer, start, 6-4, 8/2 6/2",
        "racer, start, 4-3, 13/6",
        // Hits two blots deep in its home board, whatever shots it leaves.
        "hitter, 5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 1@23 1@24, 5-4, 6/1* 6/2*",
        // Makes its bar point and its four point.
        "builder, start, 6-1, 13/7 8/7",
        "builder, start, 4-2, 8/4 6/4",
        // Keeps both anchors and takes two stacks down.
        "waiter, 3@4 4@5 4@6 2@22 2@24 / 2@2 2@4 3@5 3@6 3@7 2@8, 3-2, 6/3 5/3"
    })
    void prefer(String name, String position, String roll, String play) {
        assertEquals(play, chosen(name, position, roll));
    }

    @ParameterizedTest
    @ValueSource(strings = {"pips", "racer", "hitter", "builder", "waiter"})
    void areBetterThanChance(String name) {
        Tally tally = new Duel(
                        Baselines.named(name).orElseThrow(),
                        Baselines.named("random").orElseThrow(),
                        DuelSettings.fullGames(100, 12),
                        soFar -> {})
                .run(1);
        assertTrue(tally.values().mean() > 1, name + " wins " + tally.values().mean() + " points a game");
    }

    @Test
    void chanceChoosesEvenly() {
        PlayGenerator legal = new PlayGenerator();
        int[] planes = PositionText.parse("2@6 / 1@6").toPlanes();
        int count = legal.generate(planes, 0, 2, 1);
        int[] chosen = new int[count];
        for (int game = 0; game < 4000; game++) {
            chosen[
                    Baselines.named("random")
                            .orElseThrow()
                            .players()
                            .get()
                            .choose(planes, 0, legal, Dice.ofGame(2, game))]++;
        }
        for (int times : chosen) {
            assertEquals(4000.0 / count, times, 4 * Math.sqrt(4000.0 / count));
        }
    }
}
