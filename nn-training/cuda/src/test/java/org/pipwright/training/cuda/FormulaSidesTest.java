package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** Fixed formulas play for one side or both, in as many games and for as long as the settings say. */
class FormulaSidesTest {
    private static final int GAMES = 24;
    private static final int TURNS = 10;
    private static final List<String> FORMULAS = List.of("racer", "hitter", "builder", "waiter");

    private static GameRules rules(double share, int maxTurns) {
        return new GameRules(0, 0, 1, share, maxTurns, 0.1f, 1000);
    }

    @Test
    void sharesAndTurnsAreThoseOfTheRules() {
        int games = 30_000;
        FormulaSides sides = new FormulaSides(games, rules(0.4, 20));
        SplittableRandom random = new SplittableRandom(5);
        int[] played = new int[2];
        int both = 0;
        long turns = 0;
        for (int game = 0; game < games; game++) {
            sides.begin(game, random);
            int at = game;
            int first = (int)
                    IntStream.range(0, 22).filter(t -> sides.plays(at, 2 * t)).count();
            int second = (int) IntStream.range(0, 22)
                    .filter(t -> sides.plays(at, 2 * t + 1))
                    .count();
            assertTrue(first <= 10 && second <= 10);
            if (first > 0 && second > 0) {
                both++;
                turns += first + second;
            }
            played[0] += first > 0 ? 1 : 0;
            played[1] += second > 0 ? 1 : 0;
        }
        // Of the 12,000 games with a formula, one side is played in a quarter each and both are in half; a game of one
        // turn shows only who begins.
        assertEquals(0.3, played[0] / (double) games, 0.015);
        assertEquals(0.3 * 0.95, played[1] / (double) games, 0.015);
        assertEquals(0.2 * 0.95, both / (double) games, 0.015);
        assertEquals(11, turns / (double) both, 0.5);
    }

    /** A seed means the same games as before there were formulas. */
    @Test
    void nothingIsDrawnForNoGames() {
        SplittableRandom random = new SplittableRandom(7);
        new FormulaSides(1, rules(0, 20)).begin(0, random);
        assertEquals(new SplittableRandom(7).nextLong(), random.nextLong());
    }

    @Test
    void aFormulaMakesThePlaysOfItsSide() {
        assertEquals(GAMES, explained(1), "games in which a formula explains all plays of a side");
        assertTrue(explained(0) < GAMES / 4, "without formulas they explain few");
    }

    /** Games in which the plays of one side are all those of one formula. */
    private static int explained(double share) {
        ResidualShape shape = ResidualShape.parse("128x1");
        PlainAccelerator machine = new PlainAccelerator(Recipe.ofGames(shape, shape, GAMES, 0.05));
        machine.add(shape, Weights.of(shape));
        machine.add(shape, Weights.of(shape));
        LaneJudge judge = machine.lane();
        Lane lane = new Lane(GAMES, rules(share, 1000), 3);
        boolean[][] explains = new boolean[GAMES * 2][FORMULAS.size()];
        Arrays.stream(explains).forEach(of -> Arrays.fill(of, true));
        for (int turn = 0; turn < TURNS; turn++) {
            lane.value(machine);
            lane.throwDice(judge.plays());
            int[] before = lane.planes().clone();
            judge.plays().generate(before);
            judge.judge();
            lane.advance(judge.plays(), 0.5f, new LessonList());
            for (int game = 0; game < GAMES; game++) {
                for (int k = 0; k < FORMULAS.size(); k++) {
                    explains[2 * game + turn % 2][k] &= Arrays.equals(
                            after(FORMULAS.get(k), before, game, judge.plays().roll(game)), now(lane, game));
                }
            }
        }
        return (int) IntStream.range(0, GAMES)
                .filter(game -> explainsSide(explains[2 * game]) || explainsSide(explains[2 * game + 1]))
                .count();
    }

    private static boolean explainsSide(boolean[] formulas) {
        return formulas[0] || formulas[1] || formulas[2] || formulas[3];
    }

    private static int[] now(Lane lane, int game) {
        return Arrays.copyOfRange(lane.planes(), 8 * game, 8 * game + 8);
    }

    /** The position after a formula's play, the other side first. */
    private static int[] after(String formula, int[] planes, int game, Roll roll) {
        Player player = Baselines.named(formula).orElseThrow().players().get();
        PlayGenerator generator = new PlayGenerator();
        generator.generate(planes, 8 * game, roll.high(), roll.low());
        int chosen = player.choose(planes, 8 * game, generator, Dice.ofGame(1, 1));
        int[] after = new int[8];
        Planes.copySwapped(generator.results(), 8 * chosen, after, 0);
        return after;
    }
}
