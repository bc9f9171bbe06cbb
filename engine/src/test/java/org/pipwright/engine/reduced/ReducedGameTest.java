package org.pipwright.engine.reduced;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The index of positions and the play lists against the play generator of the full game. */
class ReducedGameTest {
    /** Sizes: C(n+25, n) arrangements; unfinished positions counted by a separate program. */
    @ParameterizedTest
    @CsvSource({"1, 26, 601", "2, 351, 106552", "3, 3276, 7953353"})
    void hasTheKnownNumberOfPositions(int checkers, int arrangements, int positions) {
        ReducedGame game = new ReducedGame(checkers);

        assertEquals(arrangements, game.sides().size());
        assertEquals(arrangements * arrangements, game.cells());
        assertEquals(positions, game.positions());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 4, 15})
    void onlySmallGamesHaveAnIndex(int checkers) {
        assertThrows(IllegalArgumentException.class, () -> new ReducedGame(checkers));
    }

    @Test
    void positionsOfOtherGamesHaveNoCell() {
        ReducedGame game = new ReducedGame(2);

        assertThrows(IllegalArgumentException.class, () -> game.cell(Position.start(3)));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void cellsAndPositionsCorrespond(int checkers) {
        ReducedGame game = new ReducedGame(checkers);
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 2000; i++) {
            int cell = random.nextInt(game.cells());
            if (game.unfinished(cell)) {
                Position position = PlayByPlay.position(game, cell);
                assertEquals(cell, game.cell(position));
                assertEquals(position.contact(), contact(game, cell));
            }
        }
    }

    private static boolean contact(ReducedGame game, int cell) {
        return game.contact(cell / game.sides().size(), cell % game.sides().size());
    }

    @Test
    void arrangementsRiseInPips() {
        Sides sides = new Sides(3);
        for (int pips = 0; pips <= sides.mostPips(); pips++) {
            for (int side = sides.firstOfPips(pips); side < sides.firstOfPips(pips + 1); side++) {
                int[] planes = new int[Planes.SIDE];
                sides.copyPlanes(side, planes, 0);
                assertEquals(pips, Planes.pips(planes, 0));
                assertEquals(pips, sides.pips(side));
            }
        }
        assertEquals(sides.size(), sides.firstOfPips(sides.mostPips() + 1));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void playListsGiveTheGeneratorsResultsInItsOrder(int checkers) {
        ReducedGame game = new ReducedGame(checkers);
        SplittableRandom random = new SplittableRandom(2);
        int blocked = 0;
        int hits = 0;
        for (int i = 0; i < 20_000; i++) {
            Position position = PlayByPlay.random(game, random);
            Roll roll = Roll.all().get(random.nextInt(Roll.COUNT));
            List<Integer> expected = generated(game, position, roll);
            assertEquals(expected, listed(game, position, roll), () -> position + " " + roll);
            blocked += expected.equals(List.of(game.cell(position.swapped()))) ? 1 : 0;
            hits += expected.stream()
                            .anyMatch(cell ->
                                    game.sides().pips(cell / game.sides().size()) > position.opponentPips())
                    ? 1
                    : 0;
        }
        assertTrue(hits > 100, "hits: " + hits);
        assertTrue(checkers == 1 || blocked > 5, "no move: " + blocked);
    }

    private static List<Integer> generated(ReducedGame game, Position position, Roll roll) {
        PlayGenerator generator = new PlayGenerator();
        generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        List<Integer> cells = new ArrayList<>();
        for (int i = 0; i < generator.size(); i++) {
            cells.add(game.cell(
                    Position.ofPlanes(generator.results(), i * Planes.STRIDE).swapped()));
        }
        return cells;
    }

    /** The cells of the first group of a list with an unblocked play, each once. */
    private static List<Integer> listed(ReducedGame game, Position position, Roll roll) {
        int cell = game.cell(position);
        int me = cell / game.sides().size();
        Rows rows = new Rows(game.sides(), cell % game.sides().size());
        PlayLists lists = game.lists();
        Set<Integer> cells = new LinkedHashSet<>();
        int list = me * Roll.COUNT + roll.index();
        for (int play = lists.first()[list]; play < lists.first()[list + 1]; play++) {
            int landing = lists.landings()[play];
            if ((landing & PlayLists.NEW_GROUP) != 0 && !cells.isEmpty()) {
                break;
            }
            if ((landing & rows.blocked) == 0) {
                cells.add(rows.row[rows.hits(landing)] + lists.results()[play]);
            }
        }
        return new ArrayList<>(cells);
    }
}
