package org.pipwright.engine.cubeplay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.ExactCube;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.PipLeader;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;

/** Whole games with the cube. */
class StakedGamesTest {
    /** Any allowed action, and a record of what was seen. */
    private static final class RandomCube implements CubePlayer {
        private final SplittableRandom random = new SplittableRandom(3);
        private int decisions;
        private int passes;
        private int highest;

        @Override
        public CubeAction act(Position position, CubeGame game) {
            decisions++;
            assertTrue(!position.finished());
            highest = Math.max(highest, game.cube().value());
            List<CubeAction> actions = new ArrayList<>(game.actions());
            CubeAction action = actions.get(random.nextInt(actions.size()));
            passes += action == CubeAction.PASS ? 1 : 0;
            return action;
        }
    }

    @Test
    void randomMoneyGamesEndWithLegalPoints() {
        RandomCube cube = new RandomCube();
        StakedGames.Side side = new StakedGames.Side(new PipLeader(), cube);
        StakedGames games = new StakedGames();
        int won = 0;
        for (int i = 0; i < 2000; i++) {
            CubeGame game = new CubeGame(new MoneyStakes(i % 2 == 0, i % 4 < 2));
            int points = games.play(game, side, side, Dice.ofGame(1, i), TurnListener.NONE);
            assertTrue(points != 0 && Math.abs(points) <= 3 * 4 * cube.highest);
            won += points > 0 ? 1 : 0;
        }
        assertTrue(cube.passes > 500 && cube.decisions > 4000 && cube.highest >= 8, "passes " + cube.passes);
        assertTrue(won > 500 && won < 1500, "won " + won);
    }

    /** Follows a match and keeps its own score. */
    private static final class Counter implements StakedGames.Watcher {
        private int games;
        private MatchScore score;
        private boolean ended;

        @Override
        public void begins(MatchScore before, boolean starts, CubeGame game) {
            assertTrue(!ended && (score == null || score.equals(before)));
            score = before;
            games++;
            assertEquals(starts ? before : before.swapped(), ((MatchStakes) game.stakes()).score());
        }

        @Override
        public void ended(int points) {
            ended = score.ends(points);
            score = ended ? score : score.after(points);
        }

        @Override
        public void turn(int[] planes, Roll roll, PlayGenerator legal, int chosen) {
            assertTrue(!ended);
        }
    }

    /** Equal sides win half of the matches; the standard error of 1000 is 0.016. */
    @Test
    void equalSidesWinHalfOfTheMatches() {
        StakedGames.Side side = new StakedGames.Side(new PipLeader(), new RandomCube());
        StakedGames games = new StakedGames();
        int won = 0;
        for (int i = 0; i < 1000; i++) {
            long match = i;
            Counter counter = new Counter();
            won += games.playMatch(1 + i % 7, side, side, number -> Dice.ofGame(match, number), counter) ? 1 : 0;
            assertTrue(counter.ended && counter.games <= 2 * (1 + i % 7) - 1);
        }
        assertEquals(500, won, 70);
    }

    /** In exactly solved endings, right play by both sides earns the exact equity. */
    @Test
    void rightPlayEarnsTheExactEquity() {
        EndgameTables tables = EndgameTables.of(
                OneSidedTable.build(new SideIndex(6, 3), 1, TableProgress.NONE),
                TwoSidedTable.build(new SideIndex(6, 3), 1, TableProgress.NONE));
        PositionEvaluator exact = new TableEvaluator(tables);
        MoneyTerms terms = new MoneyTerms(MoneyStakes.USUAL, new ExactCube(tables));
        StakedGames.Side side = StakedGames.Side.judging(exact, stakes -> terms, 0);
        StakedGames games = new StakedGames();
        int count = 40_000;
        for (String text : new String[] {"1@5 1@2 / 1@6", "1@6 1@5 1@4 / 1@6 1@5 1@4"}) {
            Position position = PositionText.parse(text);
            for (CubeOwner owner : CubeOwner.values()) {
                CubeState cube = new CubeState(2, owner);
                double sum = 0;
                double squares = 0;
                for (int i = 0; i < count; i++) {
                    Dice dice = Dice.ofGame(9, i);
                    CubeGame game = new CubeGame(MoneyStakes.USUAL, cube);
                    double points = games.play(
                                    position,
                                    game,
                                    dice::next,
                                    side,
                                    side,
                                    dice,
                                    TurnListener.NONE,
                                    StakedGames.Ending.NONE)
                            / 2.0;
                    sum += points;
                    squares += points * points;
                }
                double mean = sum / count;
                double error = Math.sqrt((squares / count - mean * mean) / count);
                double expected = terms.exact(position, cube).orElseThrow().best();
                assertEquals(expected, mean, 4 * error, text + " " + owner);
            }
        }
    }

    /** Exact chances from the table. */
    private record TableEvaluator(EndgameTables tables) implements PositionEvaluator {
        @Override
        public void evaluate(int[] planes, int at, float[] out, int outAt) {
            SideIndex sides = tables.twoSided().index();
            double win = tables.twoSided()
                    .value(sides.of(planes, at), sides.of(planes, at + Planes.SIDE))
                    .win();
            java.util.Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
            out[outAt] = (float) win;
            out[outAt + 3] = (float) (1 - win);
        }
    }
}
