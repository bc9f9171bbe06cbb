package org.pipwright.engine.play;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.position.Planes;

/** Complete play lists of two- and three-checker games that two other implementations computed from the rules. */
@Tag("fast")
class PlayListsTest {
    private static final int ROWS_EACH = 100;

    static List<String> twoCheckerRows() throws IOException {
        return TestTable.rows(PlayListsTest.class, "two-checker-plays.tsv");
    }

    static List<String> threeCheckerRows() throws IOException {
        return TestTable.rows(PlayListsTest.class, "three-checker-plays.tsv");
    }

    @ParameterizedTest
    @MethodSource({"twoCheckerRows", "threeCheckerRows"})
    void bothGeneratorsGiveTheListedResults(String row) {
        String[] fields = row.split("\t");
        NaiveBoard board = board(fields[0], fields[1]);
        int die = Integer.parseInt(fields[2]);
        int other = Integer.parseInt(fields[3]);
        Set<NaiveBoard> listed = Arrays.stream(fields[4].split(" "))
                .map(result -> board(result.split("/")[0], result.split("/")[1]))
                .collect(Collectors.toSet());

        PlayGenerator generator = new PlayGenerator();
        int size = generator.generate(board.toPlanes(), 0, Math.max(die, other), Math.min(die, other));
        Set<NaiveBoard> fast = new HashSet<>();
        for (int i = 0; i < size; i++) {
            fast.add(NaiveBoard.ofPlanes(generator.results(), i * Planes.STRIDE));
        }

        assertEquals(listed, fast);
        assertEquals(listed.size(), size);
        assertEquals(listed, NaivePlayGenerator.generate(board, die, other).results());
    }

    @Test
    void listsAreComplete() throws IOException {
        assertEquals(ROWS_EACH, twoCheckerRows().size());
        assertEquals(ROWS_EACH, threeCheckerRows().size());
    }

    private static NaiveBoard board(String mine, String theirs) {
        return NaiveBoard.of(counts(mine), counts(theirs));
    }

    private static int[] counts(String places) {
        int[] counts = new int[NaiveBoard.PLACES];
        for (String place : places.split(",")) {
            counts[Integer.parseInt(place)]++;
        }
        return counts;
    }
}
