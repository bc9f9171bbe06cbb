package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.position.Planes;

class SideIndexTest {
    /** Sizes are C(points + checkers, points), e.g. 54,264 = C(21, 6). */
    @ParameterizedTest
    @CsvSource({"6,15,54264", "6,6,924", "6,10,8008", "8,15,490314", "9,3,220", "16,3,969", "24,4,20475", "1,15,16"})
    void numbersEveryArrangementOnce(int points, int checkers, int size) {
        SideIndex index = new SideIndex(points, checkers);
        assertEquals(size, index.size());
        int[] planes = new int[Planes.SIDE];
        int[] read = new int[points + 1];
        for (int i = 0; i < size; i++) {
            index.write(i, planes, 0);
            int total = 0;
            for (int p = 1; p <= points; p++) {
                read[p] = Planes.count(planes, 0, p);
                total += read[p];
            }
            assertTrue(total <= checkers);
            assertEquals(total, index.checkersOf(i));
            assertTrue(index.covers(planes, 0));
            assertEquals(i, index.of(planes, 0));
            assertEquals(total, Planes.checkers(planes, 0, Planes.ON_BOARD));
        }
    }

    @Test
    void fewerCheckersComeFirst() {
        SideIndex six = new SideIndex(6, 6);
        SideIndex fifteen = new SideIndex(6, 15);
        int[] small = new int[Planes.SIDE];
        int[] large = new int[Planes.SIDE];
        for (int i = 0; i < six.size(); i++) {
            six.write(i, small, 0);
            fifteen.write(i, large, 0);
            assertArrayEquals(small, large);
        }
        assertEquals(7, fifteen.checkersOf(six.size()));
    }

    @Test
    void checkersOffMakeNoDifference() {
        SideIndex index = new SideIndex(11, 15);
        SplittableRandom random = new SplittableRandom(11);
        for (int n = 0; n < 10_000; n++) {
            int[] planes = new int[Planes.SIDE];
            for (int c = 1 + random.nextInt(15); c > 0; c--) {
                Planes.add(planes, 0, 1 + random.nextInt(11));
            }
            int without = index.of(planes, 0);
            for (int c = Planes.checkers(planes, 0, Planes.ON_BOARD); c < 15; c++) {
                Planes.add(planes, 0, Planes.OFF);
            }
            assertEquals(without, index.of(planes, 0));
        }
    }

    @Test
    void coversOnlyItsPointsAndCheckers() {
        SideIndex index = new SideIndex(6, 2);
        assertTrue(index.covers(CheckRows.side("0,0,1,0,0,1"), 0));
        assertFalse(index.covers(CheckRows.side("1,0,1,0,0,1"), 0));
        assertFalse(index.covers(CheckRows.side("0,0,0,0,0,0,1"), 0));
        int[] bar = new int[Planes.SIDE];
        Planes.add(bar, 0, Planes.BAR);
        assertFalse(index.covers(bar, 0));
        assertFalse(new SideIndex(24, 4).covers(bar, 0));
    }

    @Test
    void refusesWhatIsTooLarge() {
        String line = assertThrows(IllegalArgumentException.class, () -> new SideIndex(24, 15))
                .getMessage();
        assertTrue(line.contains("25140840660"), line);
        assertThrows(IllegalArgumentException.class, () -> new SideIndex(25, 1));
        assertThrows(IllegalArgumentException.class, () -> new SideIndex(6, 16));
    }
}
