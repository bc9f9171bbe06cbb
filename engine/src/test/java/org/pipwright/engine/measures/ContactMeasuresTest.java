package org.pipwright.engine.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.Source;
import org.pipwright.engine.roll.Roll;

@Tag("fast")
class ContactMeasuresTest {
    /** Shots at a lone blot so many pips away with nothing between, of 36 (common practice, checked by counting). */
    @ParameterizedTest
    @CsvSource({
        "1,11", "2,12", "3,14", "4,15", "5,15", "6,17", "7,6", "8,6", "9,5", "10,3", "11,2", "12,3", "13,0", "15,1",
        "16,1", "18,1", "20,1"
    })
    void shotsByDistance(int distance, int shots) {
        // The hitter on its 24 point, a spare of the opponent's far behind.
        Position position = PositionText.parse("2@24 / 1@" + (1 + distance) + " of 2");
        assertEquals(shots, Shots.of(position).of36());
    }

    @Test
    void shotsAreListed() {
        Shots shots = Shots.of(PositionText.parse("2@24 / 1@8 of 2"));
        assertEquals(List.of(Roll.of(4, 3), Roll.of(5, 2), Roll.of(6, 1)), shots.rolls());
    }

    /** The full rules say what hits: both dice must be played if they can be. */
    @ParameterizedTest
    @EnumSource(Source.class)
    void shotsByTheNaiveGenerator(Source source) {
        SplittableRandom random = new SplittableRandom(31 + source.ordinal());
        for (int n = 0; n < 40; n++) {
            NaiveBoard board = source.sample(random);
            List<Roll> expected = new ArrayList<>();
            for (Roll roll : Roll.all()) {
                int onBar = board.theirs(NaiveBoard.BAR);
                if (NaivePlayGenerator.generate(board, roll.high(), roll.low()).results().stream()
                        .anyMatch(result -> result.theirs(NaiveBoard.BAR) > onBar)) {
                    expected.add(roll);
                }
            }
            assertEquals(
                    expected, Shots.of(Position.ofPlanes(board.toPlanes(), 0)).rolls(), board.toString());
        }
    }

    @Test
    void structureOfTheStart() {
        Structure start = Structure.of(Position.start().toPlanes(), 0);
        assertEquals(new Structure(List.of(6, 8, 13, 24), List.of(), 1, 6, List.of(24), 2, 0), start);
    }

    @Test
    void firstOfEqualPrimesCounts() {
        Structure side = Structure.of(
                PositionText.parse("2@2 2@3 1@4 3@7 2@8 1@18 1@19 2@20 1@bar / 1@1")
                        .toPlanes(),
                0);
        assertEquals(2, side.primeLength());
        assertEquals(2, side.primeFrom());
        assertEquals(List.of(20), side.anchors());
        assertEquals(List.of(4, 18, 19), side.blots());
        assertEquals(4, side.checkersBack());
        assertEquals(1, side.onBar());
    }

    /** Counted point by point, for random boards of every regime. */
    @ParameterizedTest
    @EnumSource(Source.class)
    void structureByItsDefinition(Source source) {
        SplittableRandom random = new SplittableRandom(7 + source.ordinal());
        for (int n = 0; n < 200; n++) {
            NaiveBoard board = source.sample(random);
            Structure side = Structure.of(board.toPlanes(), 0);
            int best = 0;
            int from = 0;
            int run = 0;
            int back = board.mine(25);
            List<Integer> made = new ArrayList<>();
            List<Integer> blots = new ArrayList<>();
            for (int point = 1; point <= 24; point++) {
                int count = board.mine(point);
                run = count >= 2 ? run + 1 : 0;
                if (run > best) {
                    best = run;
                    from = point - run + 1;
                }
                if (count == 1) {
                    blots.add(point);
                } else if (count > 1) {
                    made.add(point);
                }
                back += point >= 19 ? count : 0;
            }
            assertEquals(made, side.made());
            assertEquals(blots, side.blots());
            assertEquals(best, side.primeLength());
            assertEquals(from, side.primeFrom());
            assertEquals(back, side.checkersBack());
            assertEquals(board.mine(Planes.BAR), side.onBar());
            assertTrue(side.anchors().stream().allMatch(point -> point >= 19 && made.contains(point)));
            assertEquals(
                    made.stream().filter(point -> point >= 19).count(),
                    side.anchors().size());
        }
    }
}
