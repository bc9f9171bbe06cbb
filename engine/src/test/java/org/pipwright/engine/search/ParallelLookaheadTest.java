package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

class ParallelLookaheadTest {
    private static final Model MODEL = RandomModels.of(5, 16, 8);

    private final PlayGenerator generator = new PlayGenerator();

    private static Judgement judgement() {
        return Judgement.by(new NetworkEvaluator(MODEL));
    }

    private static ParallelLookahead search(LookaheadSettings settings, int threads) {
        return new ParallelLookahead(ParallelLookaheadTest::judgement, settings, threads);
    }

    private int generate(Position position, Roll roll) {
        return generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
    }

    private List<List<Searched>> searchMany(int threads, int lookahead) {
        List<List<Searched>> found = new ArrayList<>();
        RandomWalk walk = new RandomWalk(15, 51);
        try (ParallelLookahead search = search(LookaheadSettings.DEFAULT, threads)) {
            for (int i = 0; i < 4; i++) {
                Position position = walk.next();
                int count = generate(position, walk.roll());
                found.add(search.search(new Choice(position.toPlanes(), generator.results(), count), lookahead));
            }
        }
        return found;
    }

    @Test
    void anyNumberOfThreadsFindsTheSame() {
        List<List<Searched>> one = searchMany(1, 2);
        assertEquals(one, searchMany(2, 2));
        assertEquals(one, searchMany(5, 2));
    }

    @Test
    void choosesAsTheSearchOfOneThreadDoes() {
        RandomWalk walk = new RandomWalk(15, 57);
        Lookahead alone = new Lookahead(judgement(), LookaheadSettings.DEFAULT);
        try (ParallelLookahead search = search(LookaheadSettings.DEFAULT, 3)) {
            for (int i = 0; i < 5; i++) {
                Position position = walk.next();
                int count = generate(position, walk.roll());
                float[] chances = new float[Outcomes.COUNT];
                int chosen = alone.choose(position.toPlanes(), 0, generator.results(), count, 2, chances);
                Searched line = search.search(new Choice(position.toPlanes(), generator.results(), count), 2)
                        .get(chosen);
                assertEquals(new Searched(chosen, Outcomes.of(chances, 0), 2), line);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"15, 1", "2, 2", "1, 3"})
    void valuesEveryPlayAsTheDefinitionDoes(int checkers, int lookahead) {
        NaiveLookahead naive = new NaiveLookahead(new NetworkEvaluator(MODEL));
        RandomWalk walk = new RandomWalk(checkers, 59);
        try (ParallelLookahead search = search(LookaheadSettings.FULL, 2)) {
            for (int i = 0; i < 5; i++) {
                Position position = walk.next();
                Roll roll = walk.roll();
                List<float[]> values = naive.values(position, Plays.legal(position, roll), lookahead);
                int count = generate(position, roll);
                for (Searched line :
                        search.searchAll(new Choice(position.toPlanes(), generator.results(), count), lookahead)) {
                    assertEquals(Outcomes.of(values.get(line.result()), 0), line.outcomes());
                    assertEquals(lookahead, line.lookahead());
                }
            }
        }
    }

    @Test
    void chancesBeforeTheRollAreThoseOfTheSearchOfOneThread() {
        Lookahead alone = new Lookahead(judgement(), LookaheadSettings.DEFAULT);
        try (ParallelLookahead search = search(LookaheadSettings.DEFAULT, 2)) {
            for (Position position : new RandomWalk(15, 61).next(4)) {
                for (int lookahead = 0; lookahead <= 2; lookahead++) {
                    float[] chances = new float[Outcomes.COUNT];
                    alone.evaluate(position.toPlanes(), 0, lookahead, chances, 0);
                    Outcomes found = search.evaluate(position.toPlanes(), lookahead);
                    assertEquals(Outcomes.of(chances, 0), found);
                }
            }
        }
    }

    /** However far it gets, each finished step must be what a search without a clock finds at that lookahead. */
    @ParameterizedTest
    @CsvSource({"0", "60"})
    void timeDecidesHowDeepNotWhat(int milliseconds) {
        Position position = Position.start();
        int count = generate(position, Roll.of(3, 1));
        try (ParallelLookahead search = search(LookaheadSettings.DEFAULT, 2);
                ParallelLookahead other = search(LookaheadSettings.DEFAULT, 1)) {
            List<Searched> timed = search.search(
                    new Choice(position.toPlanes(), generator.results(), count), Duration.ofMillis(milliseconds));
            int deepest = timed.stream().mapToInt(Searched::lookahead).max().getAsInt();
            assertTrue(deepest < LookaheadSettings.MAX, "no machine is that fast");
            assertEquals(other.search(new Choice(position.toPlanes(), generator.results(), count), deepest), timed);
        }
    }

    @Test
    void timeDecidesHowDeepForOddsToo() {
        int[] planes = Position.start().toPlanes();
        try (ParallelLookahead search = search(LookaheadSettings.DEFAULT, 2)) {
            Searched timed = search.evaluate(planes, Duration.ofMillis(60));
            assertEquals(search.evaluate(planes, timed.lookahead()), timed.outcomes());
        }
        try (ParallelLookahead fresh = search(LookaheadSettings.DEFAULT, 2)) {
            assertEquals(0, fresh.evaluate(planes, Duration.ZERO).lookahead());
        }
    }

    @Test
    void knownPositionsAreNotSearched() {
        float[] known = {0.1f, 0.2f, 0.3f, 0.1f, 0.2f, 0.1f};
        Judgement knowing = new Judgement(new NetworkEvaluator(MODEL), (planes, at, out, outAt) -> {
            System.arraycopy(known, 0, out, outAt, Outcomes.COUNT);
            return true;
        });
        try (ParallelLookahead search = new ParallelLookahead(() -> knowing, LookaheadSettings.FULL, 1)) {
            int count = generate(Position.start(), Roll.of(6, 5));
            long before = search.evaluations();
            for (Searched line :
                    search.searchAll(new Choice(Position.start().toPlanes(), generator.results(), count), 2)) {
                assertEquals(Outcomes.of(known, 0).swapped(), line.outcomes());
            }
            assertEquals(count, search.evaluations() - before);
        }
    }

    @Test
    void deepeningFindsItsOwnStepsInTheCache() {
        try (ParallelLookahead search = search(LookaheadSettings.DEFAULT, 1)) {
            int[] planes = Position.start().toPlanes();
            Outcomes first = search.evaluate(planes, 2);
            long once = search.evaluations();
            assertArrayEquals(
                    new Object[] {first, once}, new Object[] {search.evaluate(planes, 2), search.evaluations()});
            assertTrue(search.hitRate() > 0);
        }
    }
}
