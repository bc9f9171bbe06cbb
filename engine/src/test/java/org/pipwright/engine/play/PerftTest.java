package org.pipwright.engine.play;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/**
 * Frozen counts for fixed positions over all 21 rolls. Columns: the position; lines and distinct positions after one
 * ply; lines and distinct positions after two. The expected numbers come from the naive generator, which is run again
 * here for one ply.
 */
@Tag("fast")
class PerftTest {
    private static final int POSITIONS = 12;

    static List<String> rows() throws IOException {
        return TestTable.rows(PerftTest.class, "perft.tsv");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void fastGeneratorGivesTheFrozenCounts(String row) {
        assertEquals(row, line(PerftTest::fast, row.split("\t")[0]));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void naiveGeneratorGivesTheFrozenCountsAfterOnePly(String row) {
        String[] fields = row.split("\t");
        PerftCounter.Count one = PerftCounter.count(PerftTest::naive, board(fields[0]), 1);
        assertEquals(Long.parseLong(fields[1]), one.lines());
        assertEquals(Long.parseLong(fields[2]), one.positions());
    }

    @Test
    void tableHasAllPositions() throws IOException {
        assertEquals(POSITIONS, rows().size());
    }

    private static String line(PerftCounter.Generator generator, String position) {
        PerftCounter.Count one = PerftCounter.count(generator, board(position), 1);
        PerftCounter.Count two = PerftCounter.count(generator, board(position), 2);
        return String.format(
                Locale.ROOT,
                "%s\t%d\t%d\t%d\t%d",
                position,
                one.lines(),
                one.positions(),
                two.lines(),
                two.positions());
    }

    private static NaiveBoard board(String position) {
        return NaiveBoard.ofPlanes(PositionText.parse(position).toPlanes(), 0);
    }

    private static Iterable<NaiveBoard> naive(NaiveBoard board, Roll roll) {
        return NaivePlayGenerator.generate(board, roll.high(), roll.low()).results();
    }

    private static Iterable<NaiveBoard> fast(NaiveBoard board, Roll roll) {
        PlayGenerator generator = new PlayGenerator();
        int size = generator.generate(board.toPlanes(), 0, roll.high(), roll.low());
        List<NaiveBoard> results = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            results.add(NaiveBoard.ofPlanes(generator.results(), i * Planes.STRIDE));
        }
        return results;
    }
}
