package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.NaiveSieve;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.evaluation.Sieve;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.RandomNetworks;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/** A quick net before a deep one, in everything that asks for the best of a roll, against loops over single plays. */
class SievedSearchTest {
    private static final Model QUICK = RandomModels.of(21, 16);
    private static final Model DEEP = new Model(RandomNetworks.residual(FeatureSet.PLACES_1, 5, 32, 1), Map.of());
    private static final Model MODEL = DEEP.withQuick(QUICK.net());

    private final PositionEvaluator deep = new NetworkEvaluator(DEEP);
    private final PositionEvaluator quick = new NetworkEvaluator(QUICK);
    private final NaiveSieve plays = NaiveSieve.ofPlays(deep, quick);
    private final NaiveSieve replies = NaiveSieve.ofReplies(deep, quick, 1);

    private static CubeTerms terms(Stakes stakes) {
        return stakes instanceof MoneyStakes
                ? new MoneyTerms((MoneyStakes) stakes, null)
                : new MatchTerms((MatchStakes) stakes, ShippedMatchTable.load());
    }

    static Stream<Stakes> stakes() {
        return Stream.of(
                MoneyStakes.USUAL,
                new MatchStakes(new MatchScore(4, 2, false)),
                new MatchStakes(new MatchScore(2, 1, true)));
    }

    private static List<Position> results(Position position, Roll roll) {
        PlayGenerator generator = new PlayGenerator();
        int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        return Stream.iterate(0, i -> i + 1)
                .limit(count)
                .map(i -> Position.ofPlanes(generator.results(), i * Planes.STRIDE))
                .toList();
    }

    private static double worth(Position result, Outcomes outcomes, CubeState cube, CubeTerms terms) {
        Position next = result.swapped();
        return next.finished()
                ? terms.won(GameResult.of(next), cube)
                : terms.toOther(terms.swapped().best(next, outcomes.swapped(), cube.swapped()));
    }

    /** Each column drops for itself, by what counts there. */
    @ParameterizedTest
    @MethodSource("stakes")
    void everyColumnKeepsWhatLoopsKeep(Stakes stakes) {
        CubeTerms terms = terms(stakes);
        List<CubeState> cubes = List.of(CubeState.START, new CubeState(2, CubeOwner.ME));
        Columns columns = new ColumnSet(new ChanceCache(1)).of(terms, cubes);
        Sieve sieve = Sieve.ofReplies(new NetworkEvaluator(MODEL));
        Replies found = new Replies();
        int differently = 0;
        for (Position position : new RandomWalk(15, 33).next(6)) {
            found.expand(position.toPlanes(), 0, 0, Roll.COUNT, sieve, columns);
            for (Roll roll : Roll.all()) {
                List<Position> results = results(position, roll);
                Map<Integer, Double> points = replies.left(position, results, (result, outcomes) -> outcomes.equity());
                compare(points, found, roll, Columns.CUBELESS);
                for (CubeState cube : cubes) {
                    Map<Integer, Double> left = NaiveSieve.ofReplies(deep, quick, terms.point(cube))
                            .left(position, results, (result, outcomes) -> worth(result, outcomes, cube, terms));
                    compare(left, found, roll, 1 + columns.of(cube));
                    differently += left.keySet().equals(points.keySet()) ? 0 : 1;
                }
            }
        }
        assertTrue(differently > 3, "columns that keep other plays than cubeless points do: " + differently);
    }

    private static void compare(Map<Integer, Double> expected, Replies replies, Roll roll, int column) {
        replies.keepAll(roll.index(), column);
        Shortlist running = replies.running(column);
        int start = replies.start(roll.index());
        assertEquals(
                List.copyOf(expected.keySet()),
                Stream.iterate(0, k -> k + 1)
                        .limit(running.size())
                        .map(k -> running.get(k) - start)
                        .toList());
        expected.forEach((i, value) -> assertEquals(value, replies.worth(start + i, column), 1e-6));
        double best =
                expected.values().stream().mapToDouble(value -> value).max().orElseThrow();
        assertEquals(best, replies.worth(replies.best(roll.index(), column), column), 1e-6);
    }

    private static double best(NaiveSieve sieve, Position position, Roll roll) {
        return sieve.left(position, results(position, roll), (result, outcomes) -> outcomes.equity()).values().stream()
                .mapToDouble(value -> value)
                .max()
                .orElseThrow();
    }

    @Test
    void lookaheadLuckAndPlayersGoByTheBestThatIsLeft() {
        Lookahead search = new Lookahead(Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.DEFAULT);
        RollLuck luck = new RollLuck(new NetworkEvaluator(MODEL));
        EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(MODEL));
        PlayGenerator generator = new PlayGenerator();
        float[] found = new float[Outcomes.COUNT];
        int missed = 0;
        for (Position position : new RandomWalk(15, 35).next(20)) {
            double mean = 0;
            for (Roll roll : Roll.all()) {
                mean += roll.probability() * best(replies, position, roll);
            }
            search.evaluate(position.toPlanes(), 0, 1, found, 0);
            assertEquals(mean, Outcomes.of(found, 0).equity(), 1e-5);
            for (Roll roll : Roll.all()) {
                double expected = best(plays, position, roll);
                assertEquals(
                        best(replies, position, roll) - mean, luck.points(position.toPlanes(), 0, roll, false), 1e-5);
                int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
                int chosen = player.choose(position.toPlanes(), 0, generator, Dice.ofGame(1, 1));
                assertEquals(expected, player.equity(chosen), 1e-6);
                assertEquals(chosen, search.choose(position.toPlanes(), 0, generator.results(), count, 0, found));
                missed += Plays.legal(position, roll).stream()
                                .anyMatch(play -> judged(play.result(), position) > expected + 1e-6)
                        ? 1
                        : 0;
            }
        }
        assertTrue(missed > 20, "rolls whose best play the quick net drops: " + missed);
    }

    private static double mean(NaiveSieve sieve, Position position) {
        return Roll.all().stream()
                .mapToDouble(roll -> roll.probability() * best(sieve, position, roll))
                .sum();
    }

    /** Replies to replies are kept narrower, and what is found of a position so is not taken for what it is when asked about. */
    @Test
    void repliesToRepliesAreKeptNarrower() {
        Lookahead search = new Lookahead(Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.FULL);
        NaiveSieve later = NaiveSieve.ofLaterReplies(deep, quick, 1);
        float[] found = new float[Outcomes.COUNT];
        int differently = 0;
        for (Position position : new RandomWalk(15, 43).next(2)) {
            double mean = 0;
            List<Position> asked = new ArrayList<>();
            for (Roll roll : Roll.all()) {
                List<Position> results = results(position, roll);
                double best = Double.NEGATIVE_INFINITY;
                for (int i : replies.left(position, results, (result, outcomes) -> outcomes.equity())
                        .keySet()) {
                    Position next = results.get(i).swapped();
                    asked.add(next);
                    best = Math.max(best, -mean(later, next));
                }
                mean += roll.probability() * best;
            }
            search.evaluate(position.toPlanes(), 0, 2, found, 0);
            assertEquals(mean, Outcomes.of(found, 0).equity(), 1e-5);
            for (Position next : asked) {
                search.evaluate(next.toPlanes(), 0, 1, found, 0);
                assertEquals(mean(replies, next), Outcomes.of(found, 0).equity(), 1e-5);
                differently += mean(replies, next) - mean(later, next) > 1e-4 ? 1 : 0;
            }
        }
        assertTrue(differently > 20, "positions that are worth less with fewer replies: " + differently);
    }

    private double judged(Position result, Position parent) {
        float[] chances = new float[Outcomes.COUNT];
        deep.evaluateResults(parent.toPlanes(), 0, result.toPlanes(), 1, chances);
        return Outcomes.of(chances, 0).equity();
    }

    /** A ranking shows every play, so every play is judged by the deep net. */
    @Test
    void rankingsDropNothing() {
        try (Judge all = new Judge(Knowledge.of(MODEL), 1);
                Judge alone = new Judge(Knowledge.of(DEEP), 1)) {
            RandomWalk walk = new RandomWalk(15, 37);
            for (Position position : walk.next(10)) {
                for (Question question : List.of(Question.of(position, walk.roll()), Question.before(position))) {
                    assertEquals(alone.ask(question, Effort.STATIC), all.ask(question, Effort.STATIC));
                }
            }
        }
    }

    private static ParallelLookahead search(int threads) {
        return new ParallelLookahead(
                () -> Judgement.by(new NetworkEvaluator(MODEL)),
                () -> SievedSearchTest::terms,
                LookaheadSettings.DEFAULT,
                threads,
                ParallelLookahead.memory(),
                () -> false);
    }

    /** Threads, memory and columns beside change nothing. */
    @ParameterizedTest
    @CsvSource({"1, 2", "2, 3"})
    void theSameWhateverElseIsAsked(int lookahead, int threads) {
        Stakes stakes = new MatchStakes(new MatchScore(5, 3, false));
        CubeTerms terms = terms(stakes);
        RandomWalk walk = new RandomWalk(15, 39);
        PlayGenerator generator = new PlayGenerator();
        try (ParallelLookahead used = search(threads)) {
            for (Position position : walk.next(3)) {
                Roll roll = walk.roll();
                int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
                int[] results = generator.results();
                Choice choice = new Choice(position.toPlanes(), results, count, stakes, CubeState.START);
                used.search(choice, lookahead);
                CubeValued both = used.evaluate(position, CubeState.START, terms, lookahead);
                List<Searched> again = used.search(choice, lookahead);
                try (ParallelLookahead fresh = search(1);
                        ParallelLookahead cubeless = search(1)) {
                    assertEquals(fresh.search(choice, lookahead), again);
                    assertEquals(cubeless.evaluate(position.toPlanes(), lookahead), both.outcomes());
                }
            }
        }
    }

    /** Plays that the deep net never sees make a search cheaper. */
    @Test
    void fewerPositionsAreJudged() {
        try (Judge sieved = new Judge(Knowledge.of(MODEL), 1);
                Judge full = new Judge(Knowledge.of(DEEP), 1)) {
            Question start = Question.before(Position.start(15));
            sieved.ask(start, Effort.lookahead(1));
            full.ask(start, Effort.lookahead(1));
            assertTrue(
                    2 * sieved.evaluations() < full.evaluations(), sieved.evaluations() + " of " + full.evaluations());
        }
    }
}
