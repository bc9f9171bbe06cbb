package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.roll.Roll;

/** Two dice between the rows, in the tone of the side that has rolled. */
final class Dice {
    private static final double SIZE = 38;
    private static final double SPACING = 26;
    private static final double SPOT = 3.8;
    private static final double GRID = 10;

    private Dice() {}

    static List<Shape> of(Roll roll, Theme theme) {
        List<Shape> shapes = new ArrayList<>();
        Spot centre = new Spot(BoardPlan.RIGHT_HALF + BoardPlan.HALF_WIDTH / 2, BoardPlan.MIDDLE);
        die(shapes, centre.moved(-SPACING, 0), roll.high(), theme);
        die(shapes, centre.moved(SPACING, 0), roll.low(), theme);
        return shapes;
    }

    private static void die(List<Shape> shapes, Spot at, int shown, Theme theme) {
        shapes.add(new Shape.Box(
                "die shows-" + shown,
                at.moved(-SIZE / 2, -SIZE / 2),
                SIZE,
                SIZE,
                8,
                Ink.both(theme.mine(), theme.mineEdge(), 1.5)));
        for (int row = -1; row <= 1; row++) {
            for (int column = -1; column <= 1; column++) {
                if (spot(shown, row, column)) {
                    shapes.add(new Shape.Disc(
                            "spot", at.moved(column * GRID, row * GRID), SPOT, Ink.fill(theme.theirs())));
                }
            }
        }
    }

    /** Odd dice have a spot in the middle; corners come in pairs from 2 and 4 on, the sides with 6. */
    private static boolean spot(int shown, int row, int column) {
        if (row == 0) {
            return column == 0 ? shown % 2 == 1 : shown == 6;
        }
        return column != 0 && (row == column ? shown >= 4 : shown >= 2);
    }
}
