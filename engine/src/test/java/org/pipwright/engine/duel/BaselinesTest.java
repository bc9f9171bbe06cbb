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
        // Running leaves no shot in a race, and a checker off counts more than its pips.
        "racer, 5@3 1@9 / 5@6, 6-1, 9/3 3/2",
        // The blot on the 4 point is in the way of nothing: hitting it is worth more than safety.
        "hitter, start, 3-1, 8/5 6/5",
        "builder, start, 3-1, 8/5 6/5",
        "builder, start, 4-2, 8/4 6/4"
    })
    void prefer(String name, String position, String roll, String play) {
        assertEquals(play, chosen(name, position, roll));
    }

    @ParameterizedTest
    @ValueSource(strings = {"pips", "racer", "hitter", "builder"})
    void areBetterThanChance(String name) {
        Tally tally = new Duel(
                        Baselines.named(name).orElseThrow(),
                        Baselines.named("random").orElseThrow(),
                        DuelSettings.fullGames(400, 12),
                        soFar -> {})
                .run(1);
        System.out.println(name + " " + tally.points().mean());
        assertTrue(tally.points().mean() > 1, name + " wins " + tally.points().mean() + " points a game");
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
