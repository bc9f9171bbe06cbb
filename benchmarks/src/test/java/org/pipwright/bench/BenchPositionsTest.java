package org.pipwright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.position.Position;

/** The lists are what measurements take them for. */
class BenchPositionsTest {
    static Stream<List<Position>> lists() {
        return Stream.of(BenchPositions.randomPlay(), BenchPositions.netPlay());
    }

    @ParameterizedTest
    @MethodSource("lists")
    void thousandUnfinishedPositionsOfAllKinds(List<Position> positions) {
        assertEquals(BenchPositions.COUNT, positions.size());
        assertTrue(positions.stream().noneMatch(Position::finished));
        long contact = positions.stream().filter(Position::contact).count();
        assertTrue(contact > 500 && contact < 1000, contact + " with contact");
        assertTrue(new HashSet<>(positions).size() > 900, "mostly different");
    }
}
