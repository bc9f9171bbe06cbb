package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.Sieve;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.RandomWalk;

class RepliesTest {
    private final Sieve sieve = Sieve.ofReplies(new NetworkEvaluator(RandomModels.of(9, 16)));

    private static List<Integer> running(Replies replies) {
        Shortlist running = replies.running(Columns.CUBELESS);
        return IntStream.range(0, running.size()).mapToObj(running::get).collect(Collectors.toList());
    }

    /** The library's sort, then the two limits one after the other. */
    private static List<Integer> plainly(Replies replies, Pruning pruning) {
        Comparator<Integer> worth =
                Comparator.comparingDouble(i -> -Chances.equity(replies.chances(), i * Outcomes.COUNT));
        List<Integer> sorted = running(replies).stream()
                .sorted(worth.thenComparing(Comparator.naturalOrder()))
                .limit(pruning.most())
                .collect(Collectors.toList());
        float least = Chances.equity(replies.chances(), sorted.get(0) * Outcomes.COUNT) - pruning.within();
        return sorted.stream()
                .filter(i -> Chances.equity(replies.chances(), i * Outcomes.COUNT) >= least)
                .collect(Collectors.toList());
    }

    @ParameterizedTest
    @CsvSource({"Infinity, 2147483647", "0.05, 2147483647", "Infinity, 3", "0.02, 4", "0, 1", "0, 100"})
    void prunesAsSortingDoes(float within, int most) {
        Pruning pruning = new Pruning(within, most);
        Replies replies = new Replies();
        RandomWalk walk = new RandomWalk(15, 41);
        for (int n = 0; n < 60; n++) {
            replies.expand(walk.next().toPlanes(), 0, 0, 21, sieve, Columns.NONE);
            for (int roll = 0; roll < 21; roll++) {
                replies.keepAll(roll, Columns.CUBELESS);
                List<Integer> expected = plainly(replies, pruning);
                replies.running(Columns.CUBELESS).prune(pruning, replies);
                assertEquals(expected, running(replies));
                assertEquals(expected.get(0), replies.best(roll, Columns.CUBELESS));
            }
        }
    }

    @Test
    void pruningsThatKeepNothingAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Pruning(-0.1f, 3));
        assertThrows(IllegalArgumentException.class, () -> new Pruning(Float.NaN, 3));
        assertThrows(IllegalArgumentException.class, () -> new Pruning(0.1f, 0));
        assertThrows(IllegalArgumentException.class, () -> new LookaheadSettings(List.of(), List.of(Pruning.NONE)));
    }
}
