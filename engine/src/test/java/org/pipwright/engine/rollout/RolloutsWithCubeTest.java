package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.Judgement;

/** Rollouts with the cube against exact values, plain against luck-adjusted ones, and what must not matter. */
class RolloutsWithCubeTest {
    private static final SideIndex SIDES = new SideIndex(6, 3);
    private static final TwoSidedTable TABLE = TwoSidedTable.build(SIDES, 1, TableProgress.NONE);
    private static final EndgameTables TABLES =
            EndgameTables.of(OneSidedTable.build(SIDES, 1, TableProgress.NONE), TABLE);
    private static final MoneyTerms EXACT = new MoneyTerms(MoneyStakes.USUAL, new ExactCube(TABLES));
    private static final RolloutSettings SHORT = RolloutSettings.DEFAULT.withTrials(144);

    /** Exact chances from the table. */
    private static final PositionEvaluator EVALUATOR = (planes, at, out, outAt) -> {
        double win = TABLE.value(SIDES.of(planes, at), SIDES.of(planes, at + Planes.SIDE))
                .win();
        Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
        out[outAt] = (float) win;
        out[outAt + 3] = (float) (1 - win);
    };

    /** Exact terms that do not say so: both sides act right, but games are played to their ends. */
    private record PlayedOut() implements CubeTerms {
        @Override
        public Stakes stakes() {
            return EXACT.stakes();
        }

        @Override
        public CubeCurves curves(Position position, GammonShares shares, CubeState cube) {
            return EXACT.curves(position, shares, cube);
        }

        @Override
        public Optional<CubeValues> exact(Position position, CubeState cube) {
            return EXACT.exact(position, cube);
        }

        @Override
        public OptionalDouble known(Position position, CubeState cube) {
            return OptionalDouble.empty();
        }

        @Override
        public double best(Position position, Outcomes outcomes, CubeState cube) {
            return EXACT.best(position, outcomes, cube);
        }

        @Override
        public double won(GameResult result, CubeState cube) {
            return EXACT.won(result, cube);
        }

        @Override
        public double ended(int points) {
            return EXACT.ended(points);
        }

        @Override
        public double toOther(double value) {
            return EXACT.toOther(value);
        }

        @Override
        public double ofTaken(double value) {
            return EXACT.ofTaken(value);
        }

        @Override
        public double inAll(double value, CubeState cube) {
            return EXACT.inAll(value, cube);
        }

        @Override
        public CubeTerms swapped() {
            return this;
        }
    }

    private static Rollouts exact(RolloutSettings settings) {
        return new Rollouts(() -> Judgement.by(EVALUATOR), () -> stakes -> new PlayedOut(), settings, 1);
    }

    /** Chances from pips alone, which are wrong: wins too sure of themselves, and gammons where there are none. */
    private static final PositionEvaluator ROUGH = (planes, at, out, outAt) -> {
        double lead = Planes.pips(planes, at + Planes.SIDE) - Planes.pips(planes, at) + 2;
        float win = (float) (1 / (1 + Math.exp(-lead / 6)));
        Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
        out[outAt] = 0.9f * win;
        out[outAt + 1] = 0.1f * win;
        out[outAt + 3] = 1 - win;
    };

    private static Rollouts rough(Function<Stakes, CubeTerms> terms, RolloutSettings settings, int threads) {
        return new Rollouts(() -> Judgement.by(ROUGH), () -> terms, settings, threads);
    }

    private static Position race(SplittableRandom random, int checkers, int points) {
        int[][] sides = new int[2][26];
        for (int[] side : sides) {
            for (int c = 0; c < checkers; c++) {
                side[1 + random.nextInt(points)]++;
            }
            side[0] = Position.FULL - checkers;
        }
        return Position.of(sides[0], sides[1]);
    }

    private static RolloutLine money(Rollouts rollouts, Start start, CubeState unit) {
        return rollouts.compare(List.of(start), MoneyStakes.USUAL, unit.value(), WorkFile.NONE, report -> true)
                .of(0);
    }

    private static CubeState cube(CubeOwner owner) {
        return owner == CubeOwner.CENTRE ? CubeState.START : new CubeState(2, owner);
    }

    /**
     * Luck valued exactly explains all but the rare rolls whose best plays differ with and without the cube: trials with
     * right play and right doubles give the exact equity with next to no spread.
     */
    @Test
    void withExactValuesLuckExplainsEverything() {
        SplittableRandom random = new SplittableRandom(4);
        RolloutSettings few = RolloutSettings.DEFAULT.withTrials(36);
        try (Rollouts rollouts = exact(few)) {
            for (int i = 0; i < 60; i++) {
                Position race = race(random, 1 + random.nextInt(3), 6);
                CubeState cube = cube(CubeOwner.values()[i % 3]);
                CubeValues values = EXACT.exact(race, cube).orElseThrow();
                RolloutLine line = money(rollouts, Start.rolling(race, cube), cube);
                assertEquals(values.noDouble(), line.value().mean(), 1e-3, race + " " + cube);
                assertTrue(line.value().standardError() < 1e-3, line::toString);
                if (values.mayDouble()) {
                    RolloutLine taken = money(rollouts, Start.rolling(race, cube.taken()), cube);
                    assertEquals(values.doubleTake(), taken.value().mean(), 2e-3, race + " " + cube);
                }
            }
        }
    }

    /**
     * Without luck adjustment: errors as large as the standard errors say, neither larger nor smaller, in races with each
     * owner of the cube. A single round cannot tell all rolls apart, so that its errors are rather too large.
     */
    @ParameterizedTest
    @CsvSource({"36, 0.3, 1", "72, 0.6, 1.3", "144, 0.6, 1.3", "288, 0.6, 1.3"})
    void plainEstimatesAgreeWithExactEquities(int trials, double least, double most) {
        SplittableRandom random = new SplittableRandom(6);
        int count = 0;
        int beyond = 0;
        double errors = 0;
        double variances = 0;
        double squares = 0;
        while (count < 200) {
            Position race = race(random, 1 + random.nextInt(3), 6);
            CubeState cube = cube(CubeOwner.values()[count % 3]);
            double exact = EXACT.exact(race, cube).orElseThrow().noDouble();
            if (Math.abs(exact) > 0.9) {
                continue;
            }
            RolloutSettings settings =
                    RolloutSettings.DEFAULT.withTrials(trials).withLuckAdjusted(false);
            try (Rollouts rollouts = exact(settings.withSeed(count))) {
                Estimate estimate =
                        money(rollouts, Start.rolling(race, cube), cube).value();
                if (estimate.standardError() < 1e-6) {
                    assertEquals(exact, estimate.mean(), 1e-6, race + " " + cube + " without an error");
                    continue;
                }
                double z = (estimate.mean() - exact) / estimate.standardError();
                errors += estimate.mean() - exact;
                variances += estimate.standardError() * estimate.standardError();
                squares += z * z;
                beyond += Math.abs(z) > 3 ? 1 : 0;
                count++;
            }
        }
        assertTrue(beyond <= 4, beyond + " of " + count + " beyond 3 standard errors");
        double square = squares / count;
        assertTrue(square > least && square < most, "mean square error in standard errors: " + square);
        assertTrue(Math.abs(errors) < 3 * Math.sqrt(variances), "errors lean to one side: " + errors);
    }

    /** Rough chances value luck badly, and make for bad plays and doubles: the means must agree all the same. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void plainAndAdjustedEstimatesAgree(boolean match) {
        Stakes stakes = match ? new MatchStakes(new MatchScore(3, 4, false)) : new MoneyStakes(false, false);
        CubeTerms model = match
                ? new MatchTerms((MatchStakes) stakes, ShippedMatchTable.load())
                : new MoneyTerms((MoneyStakes) stakes, null);
        Function<Stakes, CubeTerms> terms = seen -> seen.equals(stakes) ? model : model.swapped();
        SplittableRandom random = new SplittableRandom(8);
        double errors = 0;
        double variances = 0;
        int doubled = 0;
        for (int i = 0; i < 60; i++) {
            Start start = Start.rolling(race(random, 2, 10), cube(CubeOwner.values()[i % 3]));
            try (Rollouts rollouts = rough(terms, SHORT.withSeed(i), 1)) {
                RolloutLine line = rollouts.compare(List.of(start), stakes, 1, WorkFile.NONE, report -> true)
                        .of(0);
                double error = line.value().mean() - line.plain().mean();
                double variance = Math.pow(line.value().standardError(), 2)
                        + Math.pow(line.plain().standardError(), 2);
                assertTrue(error * error <= 16 * variance + 1e-12, line::toString);
                errors += error;
                variances += variance;
                doubled += line.cube().orElseThrow().doubled() > 0 ? 1 : 0;
            }
        }
        assertTrue(Math.abs(errors) < 3 * Math.sqrt(variances), "they lean apart: " + errors);
        assertTrue(doubled > 5, "positions with doubles " + doubled);
    }

    /** At 1-away against 1-away the cube is dead: the value is the chance to win, which the table knows. */
    @Test
    void theLastGameOfAMatchIsCubeless() {
        MatchStakes stakes = new MatchStakes(new MatchScore(1, 1, false));
        MatchTerms last = new MatchTerms(stakes, ShippedMatchTable.load());
        SplittableRandom random = new SplittableRandom(9);
        try (Rollouts rollouts = new Rollouts(
                () -> Judgement.by(EVALUATOR), () -> seen -> last, RolloutSettings.DEFAULT.withTrials(36), 1)) {
            for (int i = 0; i < 30; i++) {
                Position race = race(random, 3, 6);
                RolloutLine line = rollouts.compare(
                                List.of(Start.rolling(race, CubeState.START)), stakes, 1, WorkFile.NONE, report -> true)
                        .of(0);
                assertEquals(EVALUATOR.evaluate(race).win(), line.value().mean(), 1e-5);
                assertEquals(
                        0,
                        line.cube().orElseThrow().doubled()
                                + line.cube().orElseThrow().passed(),
                        1e-9);
                assertEquals(1, line.cube().orElseThrow().shown(), 1e-9);
            }
        }
    }

    /** Plays: the value after each is that of its position, for the side that plays; a play that wins has won. */
    @Test
    void playsAreComparedForTheSideThatPlays() {
        Position position = PositionText.parse("1@5 1@2 / 1@6");
        for (Roll roll : List.of(Roll.of(2, 1), Roll.of(6, 5))) {
            List<Play> plays = Plays.legal(position, roll);
            CubeState cube = new CubeState(2, CubeOwner.ME);
            List<Start> starts =
                    plays.stream().map(play -> Start.after(play, cube)).toList();
            try (Rollouts rollouts = new Rollouts(
                    () -> Judgement.by(EVALUATOR), () -> stakes -> EXACT, RolloutSettings.DEFAULT.withTrials(36), 2)) {
                RolloutReport report = rollouts.compare(starts, MoneyStakes.USUAL, 2, WorkFile.NONE, standing -> true);
                for (int i = 0; i < plays.size(); i++) {
                    Position next = plays.get(i).next();
                    double expected = next.finished()
                            ? 1
                            : -EXACT.known(next, cube.swapped()).getAsDouble();
                    assertEquals(
                            expected,
                            report.of(i).value().mean(),
                            1e-9,
                            plays.get(i).toString());
                }
                assertEquals(0, report.lines().get(0).behind().mean());
                assertTrue(
                        report.lines().stream().allMatch(line -> line.behind().mean() <= 0));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 4})
    void threadsMakeNoDifference(int threads) {
        MoneyTerms terms = new MoneyTerms(MoneyStakes.USUAL, null);
        RolloutSettings settings = SHORT.withTruncation(6);
        List<Start> starts = List.of(
                Start.rolling(Position.start(), CubeState.START),
                Start.rolling(Position.start(), CubeState.START.taken()));
        try (Rollouts one = rough(stakes -> terms, settings, 1);
                Rollouts more = rough(stakes -> terms, settings, threads)) {
            RolloutReport alone = one.compare(starts, MoneyStakes.USUAL, 1, WorkFile.NONE, report -> true);
            assertEquals(144, alone.trials());
            assertEquals(alone, more.compare(starts, MoneyStakes.USUAL, 1, WorkFile.NONE, report -> true));
        }
    }

    @Test
    void itStopsWhenToldAndWhenSure() {
        MoneyTerms terms = new MoneyTerms(MoneyStakes.USUAL, null);
        List<Start> starts = List.of(
                Start.rolling(PositionText.parse("2@1 / 2@1"), CubeState.START),
                Start.rolling(PositionText.parse("2@1 / 2@1").swapped(), new CubeState(2, CubeOwner.THEM)));
        try (Rollouts rollouts = rough(stakes -> terms, SHORT.withTruncation(1), 2)) {
            assertEquals(
                    36,
                    rollouts.compare(starts, MoneyStakes.USUAL, 1, WorkFile.NONE, report -> false)
                            .trials());
            assertThrows(
                    CancellationException.class,
                    () -> rollouts.compare(starts, MoneyStakes.USUAL, 1, WorkFile.NONE, new Stopped()));
        }
        try (Rollouts rollouts = exact(SHORT.withLuckAdjusted(false).withSure(3))) {
            List<Start> unlike = List.of(
                    Start.rolling(PositionText.parse("1@1 / 3@6"), new CubeState(2, CubeOwner.THEM)),
                    Start.rolling(PositionText.parse("3@6 / 1@6"), new CubeState(2, CubeOwner.THEM)));
            RolloutReport report = rollouts.compare(unlike, MoneyStakes.USUAL, 2, WorkFile.NONE, standing -> true);
            assertTrue(report.clear() && report.trials() < 144, report::toString);
        }
    }

    @Test
    void whatIsTooMuchIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> exact(RolloutSettings.DEFAULT.withLookahead(7)));
    }
}
