package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.cube.CubeCurves;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.ExactCube;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.RaceEvaluator;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/** The search against a plain recursion that keeps every play, and against exact endings. */
class CubeSearchTest {
    private static final PositionEvaluator EVALUATOR = new RaceEvaluator();
    private static final List<Position> POSITIONS = Stream.of(
                    "1@24 1@23 1@6 / 1@24 1@23 1@5 of 3",
                    "2@3 1@2 / 2@4 1@1 of 4",
                    "1@bar 1@6 / 2@5 of 2",
                    "1@6 1@2 / 1@3 1@1 of 3")
            .map(PositionText::parse)
            .toList();

    /** Value to the side on roll of its best cube action, straight from the definitions. */
    private static double naive(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        Outcomes outcomes = EVALUATOR.evaluate(position);
        CubeValues model = terms.values(position, outcomes, cube);
        if (lookahead == 0) {
            return model.best();
        }
        double roll = naiveRoll(position, cube, terms, lookahead);
        if (!model.mayDouble()) {
            return roll;
        }
        double take = terms.ofTaken(naiveRoll(position, cube.taken(), terms, lookahead));
        return Math.max(roll, Math.min(take, model.doublePass()));
    }

    private static double naiveRoll(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        double mean = 0;
        for (Roll roll : Roll.all()) {
            double best = Double.NEGATIVE_INFINITY;
            for (Play play : Plays.legal(position, roll)) {
                Position next = play.result().swapped();
                double value = next.finished()
                        ? terms.won(GameResult.of(next), cube)
                        : terms.toOther(naive(next, cube.swapped(), terms.swapped(), lookahead - 1));
                best = Math.max(best, value);
            }
            mean += roll.probability() * best;
        }
        return mean;
    }

    static Stream<CubeTerms> terms() {
        return Stream.of(
                new MoneyTerms(MoneyStakes.USUAL, null),
                new MoneyTerms(new MoneyStakes(false, false), null),
                new MatchTerms(new MatchStakes(new MatchScore(3, 2, false)), ShippedMatchTable.load()),
                new MatchTerms(new MatchStakes(new MatchScore(4, 1, true)), ShippedMatchTable.load()));
    }

    @ParameterizedTest
    @MethodSource("terms")
    void equalsThePlainRecursion(CubeTerms terms) {
        CubeSearch search = new CubeSearch(Judgement.by(EVALUATOR), LookaheadSettings.FULL);
        int compared = 0;
        for (Position position : POSITIONS) {
            for (CubeOwner owner : CubeOwner.values()) {
                CubeState cube = owner == CubeOwner.CENTRE ? CubeState.START : new CubeState(2, owner);
                for (int lookahead = 1; lookahead <= 2; lookahead++) {
                    double expected = naive(position, cube, terms, lookahead);
                    assertEquals(
                            expected,
                            search.values(position, cube, terms, lookahead).best(),
                            1e-9,
                            position + " " + cube);
                    compared++;
                }
            }
        }
        assertEquals(24, compared);
    }

    /** Where every position is in the exact table, one roll of lookahead changes nothing. */
    @Test
    void lookaheadAgreesWithExactEndings() {
        EndgameTables tables = EndgameTables.of(
                OneSidedTable.build(new SideIndex(6, 4), 1, TableProgress.NONE),
                TwoSidedTable.build(new SideIndex(6, 4), 1, TableProgress.NONE));
        ExactCube exact = new ExactCube(tables);
        MoneyTerms known = new MoneyTerms(MoneyStakes.USUAL, exact);
        // Knows the values of all positions but the one it is asked about.
        for (String text : new String[] {"2@6 1@3 / 3@4", "1@5 1@2 / 1@6", "2@4 2@2 / 2@5 2@1"}) {
            Position position = PositionText.parse(text);
            CubeTerms blind = new Blind(known, position);
            for (CubeOwner owner : CubeOwner.values()) {
                CubeState cube = owner == CubeOwner.CENTRE ? CubeState.START : new CubeState(2, owner);
                CubeValues expected =
                        exact.values(position, cube, MoneyStakes.USUAL).orElseThrow();
                CubeValues found = new CubeSearch(Judgement.by(EVALUATOR), LookaheadSettings.FULL)
                        .values(position, cube, blind, 1);
                assertEquals(expected.noDouble(), found.noDouble(), 1e-7, text + " " + cube);
                if (expected.mayDouble()) {
                    assertEquals(expected.doubleTake(), found.doubleTake(), 1e-7, text + " " + cube);
                }
            }
        }
    }

    /** Exact terms that do not know one position. */
    private record Blind(MoneyTerms known, Position hidden) implements CubeTerms {
        @Override
        public Stakes stakes() {
            return known.stakes();
        }

        @Override
        public CubeCurves curves(Position position, GammonShares shares, CubeState cube) {
            return known.curves(position, shares, cube);
        }

        @Override
        public java.util.Optional<CubeValues> exact(Position position, CubeState cube) {
            return position.equals(hidden) ? java.util.Optional.empty() : known.exact(position, cube);
        }

        @Override
        public double won(GameResult result, CubeState cube) {
            return known.won(result, cube);
        }

        @Override
        public double toOther(double value) {
            return known.toOther(value);
        }

        @Override
        public double ofTaken(double value) {
            return known.ofTaken(value);
        }

        @Override
        public double ended(int points) {
            return known.ended(points);
        }

        @Override
        public double inAll(double value, CubeState cube) {
            return known.inAll(value, cube);
        }

        @Override
        public CubeTerms swapped() {
            return this;
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 7})
    void lookaheadOutOfRangeIsRefused(int lookahead) {
        MoneyTerms terms = new MoneyTerms(MoneyStakes.USUAL, null);
        CubeSearch search = new CubeSearch(Judgement.by(EVALUATOR));
        assertThrows(
                IllegalArgumentException.class,
                () -> search.values(Position.start(), CubeState.START, terms, lookahead));
    }
}
