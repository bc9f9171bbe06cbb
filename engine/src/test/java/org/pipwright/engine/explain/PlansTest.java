package org.pipwright.engine.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.Source;

class PlansTest {
    /** Against counts by definition, from boards of every regime. */
    @ParameterizedTest
    @EnumSource(Source.class)
    void plansByTheirDefinitions(Source source) {
        SplittableRandom random = new SplittableRandom(17 + source.ordinal());
        for (int n = 0; n < 25; n++) {
            NaiveBoard board = source.sample(random);
            Position position = Position.ofPlanes(board.toPlanes(), 0);
            String where = position.toString();
            assertEquals(NaivePlans.entry(board), Entry.of(position), where);
            assertEquals(NaivePlans.escape(board), Escape.of(position), where);
            assertEquals(NaivePlans.spread(board), Spread.of(position.toPlanes(), 0), where);
            assertEquals(NaivePlans.spread(board.swapped()), Spread.of(position.toPlanes(), Planes.SIDE), where);
            assertEquals(NaivePlans.numbers(board), Numbers.of(position.toPlanes(), 0), where);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Source.class,
            names = {"BEAROFF_CONTACT", "RACE", "REDUCED_GAME", "CLOSED_BOARD"})
    void shotsToComeByTheirDefinition(Source source) {
        SplittableRandom random = new SplittableRandom(71 + source.ordinal());
        for (int n = 0; n < 4; n++) {
            NaiveBoard board = source.sample(random);
            Position position = Position.ofPlanes(board.toPlanes(), 0);
            assertEquals(NaivePlans.nextShots(board), NextShots.of(position), position.toString());
        }
    }

    /** Points of a home that are open let in 1 - (closed / 6) squared of the rolls, for one checker: by arithmetic. */
    @ParameterizedTest
    @CsvSource({"0, 36", "1, 35", "2, 32", "3, 27", "4, 20", "5, 11"})
    void aCheckerComesInByTheOpenPoints(int closed, int enters) {
        StringBuilder theirs = new StringBuilder();
        for (int point = 6; point > 6 - closed; point--) {
            theirs.append("2@").append(point).append(' ');
        }
        Position position =
                PositionText.parse("1@bar 14@6 / " + theirs + (15 - 2 * closed > 0 ? 15 - 2 * closed + "@8" : ""));
        assertEquals(new Entry(1, enters), Entry.of(position));
    }

    /** From the edge of a row of five only a 6 gets out: 11 of 36 rolls. */
    @Test
    void onlySixesLeap() {
        Position position = PositionText.parse("1@24 14@6 / 2@2 2@3 2@4 2@5 3@6 4@13");
        assertEquals(new Escape(1, 11), Escape.of(position));
        assertEquals(Escape.FREE, Escape.of(PositionText.parse("start")));
    }

    @Test
    void aNumberThatHitsAndCoversIsUsedTwice() {
        // 13 to 8 and 10 to 5 are both a 5; the opponent's blot stands on this side's 8 point.
        Numbers numbers =
                Numbers.of(PositionText.parse("1@13 1@10 1@5 12@1 / 1@17 14@5").toPlanes(), 0);
        assertEquals(new Numbers(1 << 5 | 1 << 2, 1 << 5), numbers);
        assertEquals(2, numbers.good());
        assertEquals(1, numbers.duplicated());
    }
}
