package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Curves of straight lines, whose windows are seen at once. */
@Tag("fast")
class CubeWindowTest {
    private static final double CLOSE = 1e-9;

    /** Rolling, a double that is taken and one that is passed, which brings a point. */
    private static CubeWindow window(CubeCurves rolling, double takenFrom, double takenTo) {
        return CubeWindow.of(win -> {
            double take = takenFrom + (takenTo - takenFrom) * win;
            return new CubeValues(true, false, rolling.at(win).noDouble(), take, 1, take);
        });
    }

    private static CubeCurves line(double from, double to) {
        return win -> {
            double roll = from + (to - from) * win;
            return new CubeValues(true, false, roll, 0, 0, 0);
        };
    }

    /** Rolling is worth 1.5 (2 p - 1), a double 2 (2 p - 1) or a point: from 1/2 until rolling is worth more than a point. */
    @Test
    void endsWhereThePositionIsTooGood() {
        CubeWindow window = window(line(-1.5, 1.5), -2, 2);
        assertEquals(0.5, window.from(), CLOSE);
        assertEquals(1 / 1.5 / 2 + 0.5, window.to(), CLOSE);
        assertEquals(0.25, window.takePoint(), CLOSE);
    }

    @Test
    void goesOnToTheEndWhereNothingIsTooGood() {
        CubeWindow window = window(line(-1, 1), -2, 2);
        assertEquals(0.5, window.from(), CLOSE);
        assertEquals(1, window.to());
    }

    @Test
    void isNoneWhereDoublingIsNeverRight() {
        CubeWindow window = window(line(2, 3), -2, 2);
        assertTrue(Double.isNaN(window.from()));
        assertTrue(Double.isNaN(window.to()));
        assertEquals(0.25, window.takePoint(), CLOSE);
    }

    @Test
    void beginsAtNothingWhereDoublingIsAlwaysRightAndHasNoTakePointWhereNothingIsPassed() {
        CubeWindow window = window(line(-3, -2), -1, 0.5);
        assertEquals(0, window.from());
        assertEquals(1, window.to());
        assertEquals(0, window.takePoint());
    }
}
