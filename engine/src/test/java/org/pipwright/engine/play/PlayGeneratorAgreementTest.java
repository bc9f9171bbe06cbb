package org.pipwright.engine.play;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.regime.Regime;
import org.pipwright.engine.regime.RollCase;
import org.pipwright.engine.regime.Source;

/** The bit plane generator and the naive one agree as sets, and the fast one gives no result twice. */
class PlayGeneratorAgreementTest {
    private static final int MIN_PAIRS = 2_000_000;

    /** Pairs in a regime below which the run says too little about it. */
    private static final int MIN_IN_A_REGIME = 1000;

    private static final int CHUNK = 5000;

    private static final Map<Source, Integer> PAIRS = new EnumMap<>(Map.ofEntries(
            Map.entry(Source.OPENING, 150_000),
            Map.entry(Source.GAME, 400_000),
            Map.entry(Source.REDUCED_GAME, 350_000),
            Map.entry(Source.MIDDLE, 100_000),
            Map.entry(Source.BAR, 250_000),
            Map.entry(Source.CLOSED_BOARD, 100_000),
            Map.entry(Source.PRIME, 150_000),
            Map.entry(Source.RACE, 100_000),
            Map.entry(Source.BEAROFF_CONTACT, 100_000),
            Map.entry(Source.BEAROFF, 100_000),
            Map.entry(Source.BLOCKED, 200_000)));

    @Test
    void agreesOnEveryRegime() {
        List<Chunk> chunks = new ArrayList<>();
        PAIRS.forEach((source, pairs) -> {
            for (int done = 0; done < pairs; done += CHUNK) {
                chunks.add(new Chunk(source, chunks.size()));
            }
        });
        long[] counts = chunks.parallelStream().map(Chunk::run).reduce(new long[0], PlayGeneratorAgreementTest::sum);
        report(counts);
    }

    private static long[] sum(long[] a, long[] b) {
        if (a.length == 0) {
            return b;
        }
        long[] sum = a.clone();
        for (int i = 0; i < b.length; i++) {
            sum[i] += b[i];
        }
        return sum;
    }

    /** Prints how many pairs each regime had and fails if one had too few. */
    private static void report(long[] counts) {
        List<Regime> regimes = Regime.list();
        long pairs = counts[regimes.size()];
        StringBuilder table = new StringBuilder("pairs compared with the naive generator: " + pairs + "\n");
        List<String> thin = new ArrayList<>();
        for (int i = 0; i < regimes.size(); i++) {
            table.append(String.format(
                    Locale.ROOT, "%9d %s%n", counts[i], regimes.get(i).name()));
            if (counts[i] < MIN_IN_A_REGIME) {
                thin.add(regimes.get(i).name());
            }
        }
        System.out.print(table);
        assertTrue(thin.isEmpty(), () -> "too few pairs in: " + thin);
        assertTrue(pairs >= MIN_PAIRS, () -> "only " + pairs + " pairs");
    }

    /** Some pairs from one source, with a random stream of its own. */
    private static final class Chunk {
        private final Source source;
        private final SplittableRandom random;
        private final PlayGenerator generator = new PlayGenerator();
        private final long[] counts = new long[Regime.list().size() + 1];

        Chunk(Source source, int number) {
            this.source = source;
            this.random = new SplittableRandom(20_260_101L * 1_000_003 + number);
        }

        long[] run() {
            int pairs = 0;
            while (pairs < CHUNK) {
                NaiveBoard board = source.sample(random);
                for (int ply = 0; ply < source.plies() && pairs < CHUNK && !NaiveRules.finished(board); ply++) {
                    board = compareAndPlay(board).swapped();
                    pairs++;
                }
            }
            counts[Regime.list().size()] = pairs;
            return counts;
        }

        /** Compares one random roll and returns one random result. */
        private NaiveBoard compareAndPlay(NaiveBoard board) {
            int die = 1 + random.nextInt(6);
            int other = 1 + random.nextInt(6);
            RollCase pair = new RollCase(board, die, other);
            int size = generator.generate(board.toPlanes(), 0, Math.max(die, other), Math.min(die, other));
            requireSame(board, die, other, pair.results(), size);
            count(pair);
            return NaiveBoard.ofPlanes(generator.results(), random.nextInt(size) * Planes.STRIDE);
        }

        /** Every fast result must be taken out of the naive set exactly once, and nothing may be left in it. */
        private void requireSame(NaiveBoard board, int die, int other, Set<NaiveBoard> naive, int size) {
            Set<NaiveBoard> left = new HashSet<>(naive);
            for (int i = 0; i < size; i++) {
                NaiveBoard result = NaiveBoard.ofPlanes(generator.results(), i * Planes.STRIDE);
                if (!left.remove(result)) {
                    fail(board + " rolls " + die + "-" + other + ": wrong or repeated result " + result);
                }
            }
            if (!left.isEmpty()) {
                fail(board + " rolls " + die + "-" + other + ": missing results " + left);
            }
        }

        private void count(RollCase pair) {
            List<Regime> regimes = Regime.list();
            for (int i = 0; i < regimes.size(); i++) {
                if (regimes.get(i).holds(pair)) {
                    counts[i]++;
                }
            }
        }
    }
}
