package org.pipwright.engine.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/** Luck with the cube against its definition, written out plainly, and its mean over the rolls, which is 0. */
class DuelLuckTest {
    private static final PositionEvaluator EVALUATOR = new NetworkEvaluator(RandomNet.of(3));
    private static final List<Position> POSITIONS = List.of(
            Position.start(),
            PositionText.parse("2@6 3@5 2@4 1@bar / 3@6 3@5 2@22"),
            PositionText.parse("1@6 1@2 / 2@1"),
            PositionText.parse("5@6 4@5 2@4 4@3 / 6@6 5@5 3@4"));

    private static CubeTerms terms(Stakes stakes) {
        return stakes instanceof MoneyStakes
                ? new MoneyTerms((MoneyStakes) stakes, null)
                : new MatchTerms((MatchStakes) stakes, ShippedMatchTable.load());
    }

    private static double worth(Position position, Roll roll, Stakes stakes, CubeState cube) {
        Play best = null;
        for (Play play : Plays.legal(position, roll)) {
            if (best == null || cubeless(play) > cubeless(best) + 1e-6) {
                best = play;
            }
        }
        Position next = best.next();
        if (next.finished()) {
            return terms(stakes).won(GameResult.of(next), cube);
        }
        Outcomes theirs = EVALUATOR.evaluate(next);
        CubeTerms mine = terms(stakes);
        return mine.toOther(mine.swapped().values(next, theirs, cube.swapped()).best());
    }

    private static double cubeless(Play play) {
        return -EVALUATOR.evaluate(play.next()).equity();
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void luckIsWorthLessItsMean(boolean match) {
        Stakes stakes = match ? new MatchStakes(new MatchScore(4, 3, false)) : MoneyStakes.USUAL;
        DuelLuck luck = new DuelLuck(EVALUATOR, EVALUATOR, DuelLuckTest::terms);
        double largest = 0;
        for (Position position : POSITIONS) {
            for (CubeState cube :
                    List.of(CubeState.START, new CubeState(2, CubeOwner.ME), new CubeState(2, CubeOwner.THEM))) {
                boolean opening = position.equals(Position.start()) && cube.value() == 1;
                double mean = 0;
                double chance = 0;
                for (Roll roll : Roll.all()) {
                    if (!opening || !roll.isDouble()) {
                        mean += roll.probability() * worth(position, roll, stakes, cube);
                        chance += roll.probability();
                    }
                }
                CubeGame game = new CubeGame(stakes, cube);
                double sum = 0;
                for (Roll roll : Roll.all()) {
                    if (opening && roll.isDouble()) {
                        continue;
                    }
                    double found = luck.ofRoll(true, position.toPlanes(), roll, opening, game);
                    double unit = match ? 1 : cube.value();
                    assertEquals(
                            unit * (worth(position, roll, stakes, cube) - mean / chance),
                            found,
                            2e-5,
                            position + " " + roll);
                    sum += roll.probability() * found;
                    largest = Math.max(largest, Math.abs(found));
                }
                assertEquals(0, sum, 1e-12);
            }
        }
        assertTrue(largest > 0.01, "largest luck " + largest);
    }

    /** Starting is good luck for one side and as much bad luck for the other. */
    @ParameterizedTest
    @ValueSource(ints = {1, 3, 5})
    void startingIsLuckToo(int theirs) {
        DuelLuck luck = new DuelLuck(EVALUATOR, EVALUATOR, DuelLuckTest::terms);
        MatchScore score = new MatchScore(3, theirs, theirs == 1);
        double mine = luck.ofStarting(new MatchStakes(score));
        double other = luck.ofStarting(new MatchStakes(score.swapped()));
        // Whoever starts: half of the difference between starting and not, for that side.
        assertEquals(mine, other, 1e-9);
    }
}
