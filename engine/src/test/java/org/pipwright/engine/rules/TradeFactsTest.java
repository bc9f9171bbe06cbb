package org.pipwright.engine.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** What every player knows, by examples of our own. Common practice, no source. */
@Tag("fast")
class TradeFactsTest {
    @Test
    void theStartHas15CheckersASideAnd167Pips() {
        Position start = Position.start();
        assertEquals(15, start.checkers());
        assertEquals(167, start.pips());
        assertEquals(167, start.opponentPips());
        List<Integer> parts =
                Stream.of(24, 13, 8, 6).map(point -> point * start.count(point)).collect(Collectors.toList());
        assertEquals(List.of(48, 65, 24, 30), parts);
        assertEquals(start, start.swapped());
        assertTrue(start.contact());
    }

    @Test
    void a6WithNothingOnThe6PointBearsOffFromTheHighestPoint() {
        Position position = PositionText.parse("3@5 2@4 2@2 / 2@6 2@3");
        Set<String> plays = Plays.legal(position, Roll.of(6, 2)).stream()
                .map(Play::toString)
                .collect(Collectors.toSet());
        assertEquals(Set.of("5/off 5/3", "5/off 4/2", "5/off 2/off"), plays);
    }

    @Test
    void aGammonWithTheCubeAt4Is8Points() {
        assertEquals(8, GameResult.GAMMON.points(4));
    }
}
