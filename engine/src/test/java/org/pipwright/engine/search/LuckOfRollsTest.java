package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The luck of a roll, and what lookahead has from its having been measured. */
class LuckOfRollsTest {
    private static final Model MODEL = RandomModels.of(5, 16);
    private static final MoneyTerms TERMS = new MoneyTerms(MoneyStakes.USUAL, null);

    private static ParallelLookahead search() {
        return new ParallelLookahead(
                () -> Judgement.by(new NetworkEvaluator(MODEL)),
                () -> stakes -> new MoneyTerms((MoneyStakes) stakes, null),
                LookaheadSettings.DEFAULT,
                1,
                ParallelLookahead.memory(),
                () -> false);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void isNothingOnAverageAndLeavesLookaheadNothingToDo(boolean cubeful) {
        Stakes stakes = cubeful ? MoneyStakes.USUAL : new CubelessStakes();
        try (ParallelLookahead lucky = search();
                ParallelLookahead fresh = search()) {
            for (Position position : new RandomWalk(15, 23).next(30)) {
                double sum = 0;
                for (Roll roll : Roll.all()) {
                    sum += roll.ways() * lucky.luck(position, roll, false, stakes, CubeState.START);
                }
                assertEquals(0, sum, 1e-9);
                long before = lucky.evaluations();
                assertEquals(fresh.evaluate(position.toPlanes(), 1), lucky.evaluate(position.toPlanes(), 1));
                if (cubeful) {
                    CubeValues expected =
                            fresh.evaluate(position, CubeState.START, TERMS, 1).values();
                    assertEquals(
                            expected,
                            lucky.evaluate(position, CubeState.START, TERMS, 1).values());
                }
                assertEquals(before, lucky.evaluations(), "evaluations, though all rolls were looked at for the luck");
            }
        }
    }

    /** An opening roll is no double, so doubles are no part of the mean. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void ofTheFirstRollLeavesDoublesOut(boolean cubeful) {
        Stakes stakes = cubeful ? MoneyStakes.USUAL : new CubelessStakes();
        try (ParallelLookahead search = search()) {
            double sum = 0;
            for (Roll roll : Roll.opening()) {
                sum += search.luck(Position.start(), roll, true, stakes, CubeState.START);
            }
            assertEquals(0, sum, 1e-9);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void canBeStopped(boolean cubeful) {
        Lookahead search = new Lookahead(
                Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.DEFAULT, new ChanceCache(4), () -> true);
        Columns columns = cubeful ? search.columns(TERMS, List.of(CubeState.START)) : Columns.NONE;
        assertThrows(
                CancellationException.class,
                () -> search.luck(Position.start().toPlanes(), Roll.parse("3-1"), true, columns, 0));
    }
}
