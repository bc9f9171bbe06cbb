package org.pipwright.bench.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The table benchmarks, run once, give sensible answers. */
class TableAnswersTest {
    @Test
    void lookups() {
        TableBenchmark benchmark = new TableBenchmark();
        benchmark.prepare();
        double mean = benchmark.meanRolls() / 2000;
        // About 11 checkers on 3.5 pips each, with wastage.
        assertTrue(mean > 5 && mean < 8, "mean rolls " + mean);
        // Whoever is on roll is the favourite, all else being equal.
        assertEquals(0.6, benchmark.exactChances() / 1000, 0.1);
        assertEquals(0.55, benchmark.raceFromDistributions() / 1000, 0.1);
    }

    @Test
    void builds() {
        TableBuildBenchmark benchmark = new TableBuildBenchmark();
        benchmark.threads = 2;
        assertEquals(54_264, benchmark.oneSided().index().size());
        assertEquals(0.8125, benchmark.twoSided().value(last(6), last(6)).win(), 1e-6);
    }

    /** The arrangement of one checker on a point: those come after the empty one. */
    private static int last(int point) {
        return 7 - point;
    }
}
