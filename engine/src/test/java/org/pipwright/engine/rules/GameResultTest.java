package org.pipwright.engine.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.RandomBoards;

@Tag("fast")
class GameResultTest {
    @ParameterizedTest
    @CsvSource({
        "off / 1@1, SINGLE",
        "off / 14@24 of 15, SINGLE",
        "off / 15@18, GAMMON",
        "off / 15@1, GAMMON",
        "off / 14@1 1@18, GAMMON",
        "off / 14@1 1@19, BACKGAMMON",
        "off / 14@1 1@24, BACKGAMMON",
        "off / 14@1 1@bar, BACKGAMMON",
        "off / 13@1 1@bar, SINGLE",
        "off / 1@1 of 1, GAMMON",
        "off / 1@bar of 1, BACKGAMMON"
    })
    void resultIsTheSameWhoeverWon(String text, GameResult expected) {
        Position position = PositionText.parse(text);
        assertEquals(expected, GameResult.of(position));
        assertEquals(expected, GameResult.of(position.swapped()));
    }

    /** Random losers against the definition. */
    @Test
    void agreesWithTheDefinition() {
        int[] seen = new int[4];
        RandomBoards.of(31, 20_000).forEach(board -> {
            int points = NaiveRules.pointsLost(board);
            assertEquals(points, GameResult.of(board.toPlanes(), 0).points());
            assertEquals(
                    points,
                    GameResult.of(board.swapped().toPlanes(), Planes.SIDE).points());
            Position lost = Position.of(counts(board), winner(board));
            assertEquals(points, GameResult.of(lost).points());
            assertEquals(points, GameResult.of(lost.swapped()).points());
            seen[points]++;
        });
        for (int points = 1; points <= 3; points++) {
            assertTrue(seen[points] > 300, "too few games lost by " + points);
        }
    }

    @Test
    void refusesAnUnfinishedGame() {
        assertThrows(IllegalArgumentException.class, () -> GameResult.of(Position.start()));
    }

    @ParameterizedTest
    @CsvSource({"SINGLE, 1, 1", "GAMMON, 4, 8", "BACKGAMMON, 64, 192"})
    void cubeMultipliesPoints(GameResult result, int cube, int points) {
        assertEquals(points, result.points(cube));
    }

    @ParameterizedTest
    @ValueSource(ints = {-2, 0, 3, 6, Integer.MIN_VALUE})
    void refusesCubesThatDoNotExist(int cube) {
        assertThrows(IllegalArgumentException.class, () -> GameResult.SINGLE.points(cube));
    }

    private static int[] counts(NaiveBoard board) {
        int[] counts = new int[Planes.PLACES];
        Arrays.setAll(counts, board::mine);
        return counts;
    }

    private static int[] winner(NaiveBoard loser) {
        int[] counts = new int[Planes.PLACES];
        counts[Planes.OFF] = NaiveRules.checkers(loser);
        return counts;
    }
}
