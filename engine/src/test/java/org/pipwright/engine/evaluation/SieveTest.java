package org.pipwright.engine.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

@Tag("fast")
class SieveTest {
    private static final int MAX = 8192;

    private final PlayGenerator generator = new PlayGenerator();
    private final int[] starts = new int[Roll.COUNT + 1];
    private final int[] results = new int[MAX * Planes.STRIDE];
    private final float[] chances = new float[MAX * Outcomes.COUNT];
    private final double[] worth = new double[MAX];

    /** The results of all rolls side by side, as a search asks for them. */
    private void expand(Position position) {
        int count = 0;
        for (Roll roll : Roll.all()) {
            starts[roll.index()] = count;
            int size = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
            System.arraycopy(generator.results(), 0, results, count * Planes.STRIDE, size * Planes.STRIDE);
            count += size;
        }
        starts[Roll.COUNT] = count;
    }

    private List<Position> results(int roll) {
        List<Position> list = new ArrayList<>();
        for (int i = starts[roll]; i < starts[roll + 1]; i++) {
            list.add(Position.ofPlanes(results, i * Planes.STRIDE));
        }
        return list;
    }

    private Map<Integer, Double> found(int roll) {
        Map<Integer, Double> found = new TreeMap<>();
        for (int i = starts[roll]; i < starts[roll + 1]; i++) {
            if (worth[i] > Double.NEGATIVE_INFINITY) {
                found.put(i - starts[roll], worth[i]);
                assertEquals((float) worth[i], Chances.equity(chances, i * Outcomes.COUNT));
            }
        }
        return found;
    }

    @ParameterizedTest
    @CsvSource({"0.02, 6, 15", "0.1, 3, 15", "Infinity, 4, 15", "0.05, 2147483, 15", "0, 1, 15", "0.1, 6, 2"})
    void leavesOfEachRollWhatLoopsLeaveAndJudgesNothingElse(float within, int most, int checkers) {
        RoughEvaluator quick = new RoughEvaluator(3, null);
        RoughEvaluator judging = new RoughEvaluator(4, quick);
        Sieve sieve = new Sieve(judging, within, most);
        NaiveSieve naive = new NaiveSieve(new RoughEvaluator(4, null), new RoughEvaluator(3, null), within, most);
        int dropped = 0;
        int repeated = 0;
        for (Position position : new RandomWalk(checkers, 17).next(40)) {
            expand(position);
            int before = judging.asked();
            int judged = sieve.judge(
                    position.toPlanes(), 0, results, starts, 0, Roll.COUNT, Sieve.Worth.POINTS, chances, worth);
            int left = 0;
            Set<Position> different = new HashSet<>();
            for (int roll = 0; roll < Roll.COUNT; roll++) {
                Map<Integer, Double> expected =
                        naive.left(position, results(roll), (result, outcomes) -> (float) outcomes.equity());
                Map<Integer, Double> found = found(roll);
                assertEquals(expected.keySet(), found.keySet());
                expected.forEach((i, value) -> assertEquals(value, found.get(i), 1e-6));
                left += found.size();
                List<Position> all = results(roll);
                found.keySet().forEach(i -> different.add(all.get(i)));
            }
            assertEquals(different.size(), judged);
            long finished = different.stream().filter(Position::finished).count();
            assertEquals(judged - finished, judging.asked() - before);
            repeated += left - judged;
            dropped += starts[Roll.COUNT] - left;
        }
        assertTrue(dropped > 100, "too few dropped: " + dropped);
        assertTrue(repeated > 10, "too few come twice: " + repeated);
    }

    /** The other rolls asked about along with one change nothing. */
    @Test
    void aRollAloneIsWhatItIsAmongOthers() {
        Sieve sieve = Sieve.ofPlays(new RoughEvaluator(6, new RoughEvaluator(5, null)));
        for (Position position : new RandomWalk(15, 23).next(20)) {
            expand(position);
            int[] planes = position.toPlanes();
            sieve.judge(planes, 0, results, starts, 0, Roll.COUNT, Sieve.Worth.POINTS, chances, worth);
            for (Roll roll : Roll.all()) {
                int size = generator.generate(planes, 0, roll.high(), roll.low());
                double[] alone = new double[size];
                int best = sieve.best(planes, 0, generator.results(), size, new float[size * Outcomes.COUNT], alone);
                int from = starts[roll.index()];
                if (size > 1) {
                    assertEquals(
                            Arrays.stream(alone).boxed().toList(),
                            Arrays.stream(worth, from, from + size).boxed().toList());
                }
                assertEquals(Arrays.stream(alone).max().getAsDouble(), alone[best]);
            }
        }
    }

    @Test
    void withoutAQuickEvaluatorAllIsJudged() {
        RoughEvaluator judging = new RoughEvaluator(8, null);
        assertSame(judging, judging.quick());
        Sieve sieve = new Sieve(judging, 0, 1);
        Position start = Position.start(15);
        expand(start);
        int judged =
                sieve.judge(start.toPlanes(), 0, results, starts, 0, Roll.COUNT, Sieve.Worth.POINTS, chances, worth);
        assertEquals(starts[Roll.COUNT], judged);
        assertEquals(judged, judging.asked());
        assertTrue(Arrays.stream(worth, 0, judged).allMatch(Double::isFinite));
    }

    /** Nothing to choose from: the quick evaluator is not even asked. */
    @Test
    void aForcedPlayIsJudgedAtOnce() {
        RoughEvaluator quick = new RoughEvaluator(1, null);
        RoughEvaluator judging = new RoughEvaluator(2, quick);
        Position start = Position.start(15);
        generator.generate(start.toPlanes(), 0, 3, 1);
        Sieve.ofPlays(judging).best(start.toPlanes(), 0, generator.results(), 1, chances, worth);
        assertEquals(0, quick.asked());
        assertEquals(1, judging.asked());
    }
}
