package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.RandomModels;

class RolloutsTest {
    private static final Model MODEL = RandomModels.of(13, 16);
    private static final RolloutSettings SHORT = RolloutSettings.DEFAULT.withTrials(288);

    private static Rollouts rollouts(RolloutSettings settings, int threads) {
        return new Rollouts(() -> Judgement.by(new NetworkEvaluator(MODEL)), settings, threads);
    }

    /** Races of one to three checkers a side that either side may well win, so that no chance hangs on rare events. */
    private static List<Position> smallRaces(RaceSolver exact, long seed, int count) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Position> races = new ArrayList<>();
        while (races.size() < count) {
            int checkers = 1 + random.nextInt(3);
            Position race = Position.of(randomSide(random, checkers), randomSide(random, checkers));
            if (Math.abs(RaceSolver.equity(exact.chances(race))) < 0.8) {
                races.add(race);
            }
        }
        return races;
    }

    private static int[] randomSide(SplittableRandom random, int checkers) {
        int[] side = new int[26];
        side[0] = random.nextInt(3) == 0 ? random.nextInt(checkers) : 0;
        for (int c = side[0]; c < checkers; c++) {
            side[1 + random.nextInt(checkers == 3 ? 7 : 12)]++;
        }
        return side;
    }

    /** How far many estimates are from what they estimate, together. */
    private static final class Score {
        private static final double ROUNDING = 1e-6;

        private int count;
        private double errors;
        private double variances;
        private double squares;
        private int beyond;

        void add(double exact, Estimate estimate) {
            double error = estimate.mean() - exact;
            if (estimate.standardError() < ROUNDING) {
                // The throws that are spread evenly decide such a race.
                assertEquals(0, error, 10 * ROUNDING);
                return;
            }
            double z = error / estimate.standardError();
            count++;
            errors += error;
            variances += estimate.standardError() * estimate.standardError();
            squares += z * z;
            beyond += Math.abs(z) > 3 ? 1 : 0;
        }

        /**
         * If the standard errors are honest, squares of errors in units of them average 1, give or take 0.1 (the standard
         * deviation of the mean of 200 squares of standard normals); about one in 370 is beyond 3; and the errors do not
         * lean to one side.
         */
        void check() {
            assertTrue(squares / count > 0.7, "mean square error in standard errors: " + squares / count);
            assertTrue(squares / count < 1.3, "mean square error in standard errors: " + squares / count);
            assertTrue(beyond <= 3, beyond + " of " + count + " beyond 3 standard errors");
            assertTrue(Math.abs(errors) < 3 * Math.sqrt(variances), "errors lean to one side: " + errors);
        }
    }

    /** With a net that knows nothing, rollouts must still find what its own play is worth, worked out by recursion. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void agreesWithTheExactValueOfTheSamePlay(boolean luckAdjusted) {
        RaceSolver exact = RaceSolver.ofPolicy(new NetworkEvaluator(MODEL));
        Score score = new Score();
        for (Position race : smallRaces(exact, 3, 200)) {
            // Other dice for each position: with the same ones the errors would go together.
            RolloutSettings settings = SHORT.withLuckAdjusted(luckAdjusted).withSeed(score.count);
            double[] chances = exact.chances(race);
            try (Rollouts rollouts = rollouts(settings, 1)) {
                RolloutLine line = rollouts.odds(race, WorkFile.NONE, RolloutListener.NONE)
                        .lines()
                        .get(0);
                score.add(RaceSolver.equity(chances), line.value());
                for (int k = 0; k < Outcomes.COUNT; k++) {
                    Estimate chance = line.chances().get(k);
                    double rare = Math.sqrt(chances[k] / SHORT.trials());
                    assertEquals(chances[k], chance.mean(), 5 * Math.max(chance.standardError(), rare) + 1e-6);
                }
            }
        }
        score.check();
    }

    /** Against exact values luck explains everything: every single trial gives the exact chances. */
    @Test
    void withAnExactEvaluatorEachTrialIsExact() {
        RaceSolver best = RaceSolver.ofBestPlay();
        RolloutSettings one = RolloutSettings.DEFAULT.withTrials(1);
        try (Rollouts rollouts = new Rollouts(() -> Judgement.by(best), one, 1)) {
            for (Position race : smallRaces(best, 4, 200)) {
                RolloutLine line = rollouts.odds(race, WorkFile.NONE, RolloutListener.NONE)
                        .lines()
                        .get(0);
                assertEquals(RaceSolver.equity(best.chances(race)), line.value().mean(), 1e-5, race::toString);
                assertTrue(line.value().standardError() < 1e-5, line::toString);
            }
        }
    }

    @Test
    void plainEstimatesWithAnExactEvaluatorAgreeToo() {
        RaceSolver best = RaceSolver.ofBestPlay();
        Score score = new Score();
        for (Position race : smallRaces(best, 6, 200)) {
            RolloutSettings settings = SHORT.withLuckAdjusted(false).withSeed(score.count);
            try (Rollouts rollouts = new Rollouts(() -> Judgement.by(best), settings, 1)) {
                RolloutLine line = rollouts.odds(race, WorkFile.NONE, RolloutListener.NONE)
                        .lines()
                        .get(0);
                score.add(RaceSolver.equity(best.chances(race)), line.value());
            }
        }
        score.check();
    }

    /** The same games, with and without luck: the difference is the mean luck, which is 0 on average. */
    @ParameterizedTest
    @CsvSource({"start", "4@6 2@5 3@8 3@13 1@22 2@24 / 4@6 2@4 3@8 4@13 1@23 1@24", "1@bar 2@6 2@5 / 1@24 2@6 2@5"})
    void luckAdjustedAndPlainEstimatesAgree(String text) {
        Position position = PositionText.parse(text);
        RolloutSettings settings = RolloutSettings.DEFAULT.withTrials(72).withTruncation(12);
        try (Rollouts rollouts = rollouts(settings, 2);
                Rollouts plainly = rollouts(settings.withLuckAdjusted(false), 1)) {
            RolloutLine line = rollouts.odds(position, WorkFile.NONE, RolloutListener.NONE)
                    .lines()
                    .get(0);
            Estimate plain = plainly.odds(position, WorkFile.NONE, RolloutListener.NONE)
                    .lines()
                    .get(0)
                    .value();
            assertEquals(plain, line.plain());
            double bound = 4 * Math.hypot(plain.standardError(), line.value().standardError());
            assertEquals(plain.mean(), line.value().mean(), bound);
            assertTrue(bound > 0);
            double sum = line.chances().stream().mapToDouble(Estimate::mean).sum();
            assertEquals(1, sum, 1e-6);
        }
    }

    @Test
    void anyNumberOfThreadsGivesTheSame() {
        Position position = PositionText.parse("2@6 2@5 1@21 / 2@6 2@5 1@22");
        Roll roll = Roll.of(6, 2);
        List<Play> plays = Plays.legal(position, roll);
        List<RolloutReport> reports = new ArrayList<>();
        RolloutSettings settings = RolloutSettings.DEFAULT.withTrials(72);
        for (int threads : new int[] {1, 2, 5}) {
            try (Rollouts rollouts = rollouts(settings, threads)) {
                reports.add(rollouts.compare(position, roll, plays, RolloutListener.NONE));
            }
        }
        assertEquals(reports.get(0), reports.get(1));
        assertEquals(reports.get(0), reports.get(2));
        assertEquals(72, reports.get(0).trials());
    }

    /** A candidate's numbers are those of its own rollout: the others share its dice and nothing else. */
    @Test
    void candidatesAreRolledOutAsIfAlone() {
        Position position = PositionText.parse("1@3 1@9 13@off / 2@12 13@off");
        Roll roll = Roll.of(2, 1);
        List<Play> plays = Plays.legal(position, roll);
        try (Rollouts rollouts = rollouts(SHORT, 2)) {
            RolloutReport together = rollouts.compare(position, roll, plays, RolloutListener.NONE);
            assertEquals(plays.size(), together.lines().size());
            for (RolloutLine line : together.lines()) {
                Play play = plays.get(line.candidate());
                RolloutLine alone = rollouts.compare(position, roll, List.of(play), RolloutListener.NONE)
                        .lines()
                        .get(0);
                assertEquals(alone.value(), line.value());
                assertEquals(alone.chances(), line.chances());
            }
        }
    }

    @Test
    void aFinishedCandidateIsCertain() {
        Position position = PositionText.parse("1@1 14@off / 1@2 14@off");
        Roll roll = Roll.of(2, 1);
        try (Rollouts rollouts = rollouts(SHORT, 1)) {
            RolloutLine line = rollouts.compare(position, roll, Plays.legal(position, roll), RolloutListener.NONE)
                    .lines()
                    .get(0);
            assertEquals(new Estimate(1, 0), line.value());
            Position over = PositionText.parse("15@off / 15@1");
            assertThrows(
                    IllegalArgumentException.class, () -> rollouts.odds(over, WorkFile.NONE, RolloutListener.NONE));
            assertThrows(
                    IllegalArgumentException.class,
                    () -> rollouts.compare(position, roll, List.of(), RolloutListener.NONE));
        }
    }

    @Test
    void truncatedAfterOneRollItIsLookaheadOne() {
        Position position = PositionText.parse("4@6 2@5 3@8 3@13 1@22 2@24 / 4@6 2@4 3@8 4@13 1@23 1@24");
        try (Rollouts rollouts =
                rollouts(RolloutSettings.DEFAULT.withTruncation(1).withTrials(36), 1)) {
            RolloutLine line = rollouts.odds(position, WorkFile.NONE, RolloutListener.NONE)
                    .lines()
                    .get(0);
            Lookahead once = new Lookahead(Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.FULL);
            float[] mean = new float[Outcomes.COUNT];
            once.evaluate(position.toPlanes(), 0, 1, mean, 0);
            assertEquals(Outcomes.of(mean, 0).equity(), line.value().mean(), 1e-5);
            assertEquals(
                    Outcomes.of(mean, 0).equity(), line.plain().mean(), 1e-5, "36 stratified throws are all there are");
        }
    }

    @Test
    void gamesEndWhereTheHorizonKnowsMore() {
        float[] known = {0.25f, 0.25f, 0, 0.25f, 0, 0.25f};
        Judgement knowing = new Judgement(new NetworkEvaluator(MODEL), (planes, at, out, outAt) -> {
            System.arraycopy(known, 0, out, outAt, Outcomes.COUNT);
            return true;
        });
        try (Rollouts rollouts = new Rollouts(() -> knowing, SHORT, 1)) {
            RolloutLine line = rollouts.compare(
                            Position.start(),
                            Roll.of(3, 1),
                            List.of(PlayText.parse("8/5 6/5", Position.start(), Roll.of(3, 1))),
                            RolloutListener.NONE)
                    .lines()
                    .get(0);
            assertEquals(new Estimate(0.25, 0), line.value());
        }
    }

    @Test
    void stopsOnceTheBestIsClearAndNotBefore() {
        Position position = PositionText.parse("1@6 1@8 13@off / 1@1 1@3 13@off");
        Roll roll = Roll.of(6, 1);
        List<Play> plays = Plays.legal(position, roll);
        try (Rollouts rollouts =
                rollouts(RolloutSettings.DEFAULT.withTrials(20_000).withSure(3), 2)) {
            List<RolloutReport> looks = new ArrayList<>();
            RolloutReport last = rollouts.compare(position, roll, plays, report -> looks.add(report));
            assertTrue(last.clear(), last::toString);
            assertTrue(last.trials() < 20_000);
            looks.subList(0, looks.size() - 1).forEach(look -> assertTrue(!look.clear()));
            RolloutLine second = last.lines().get(1);
            assertTrue(-second.behind().mean() > last.needed() * second.behind().standardError());
            assertTrue(last.needed() > 3, "looking again and again must cost something");
        }
    }

    @Test
    void theListenerCanStopIt() {
        try (Rollouts rollouts = rollouts(RolloutSettings.DEFAULT, 2)) {
            RolloutReport report =
                    rollouts.odds(PositionText.parse("2@3 / 2@3"), WorkFile.NONE, standing -> standing.trials() < 100);
            assertEquals(108, report.trials());
        }
    }

    /** Stops in the midst of the third round, or of the first. */
    @ParameterizedTest
    @ValueSource(ints = {2, 0})
    void itCanBeStoppedBetweenRolls(int rounds) {
        List<RolloutReport> seen = new ArrayList<>();
        AtomicInteger rolls = new AtomicInteger();
        RolloutListener stopping = new RolloutListener() {
            @Override
            public boolean round(RolloutReport report) {
                return seen.add(report);
            }

            @Override
            public boolean stopped() {
                return seen.size() == rounds && rolls.incrementAndGet() > 20;
            }
        };
        Position position = PositionText.parse("2@6 13@off / 2@6 13@off");
        try (Rollouts rollouts = rollouts(RolloutSettings.DEFAULT, 2)) {
            if (rounds == 0) {
                assertThrows(CancellationException.class, () -> rollouts.odds(position, WorkFile.NONE, stopping));
            } else {
                RolloutReport last = rollouts.odds(position, WorkFile.NONE, stopping);
                assertEquals(seen.get(rounds - 1), last);
            }
        }
        assertTrue(rolls.get() > 20 && rolls.get() < 30, "stops at once: " + rolls);
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        RolloutSettings ok = RolloutSettings.DEFAULT;
        assertThrows(IllegalArgumentException.class, () -> ok.withTrials(0));
        assertThrows(IllegalArgumentException.class, () -> ok.withTrials(20_000_000));
        assertThrows(IllegalArgumentException.class, () -> ok.withLookahead(-1));
        assertThrows(IllegalArgumentException.class, () -> ok.withTruncation(-1));
        assertThrows(IllegalArgumentException.class, () -> ok.withSure(0.5));
        assertEquals(36, ok.withTrials(1).trials());
    }
}
