package org.pipwright.cli.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Colours of pixels at places known from the plan of the board. */
class RasterTest {
    static Stream<Arguments> themesAndWidths() {
        return Stream.of(Theme.LIGHT, Theme.PRINT)
                .flatMap(theme -> Stream.of(300, 701, 1600).map(width -> Arguments.of(theme, width)));
    }

    private static int at(BufferedImage image, Spot spot) {
        double scale = image.getWidth() / BoardPlan.WIDTH;
        return image.getRGB((int) (spot.x() * scale), (int) (spot.y() * scale)) & 0xFFFFFF;
    }

    @ParameterizedTest
    @MethodSource("themesAndWidths")
    void checkersAndPointsHaveTheirColours(Theme theme, int width) {
        BufferedImage image = Raster.of(BoardPicture.of(Scene.of(Position.start()), theme), width);
        assertEquals(width, image.getWidth());
        assertEquals(width * BoardPlan.HEIGHT / BoardPlan.WIDTH, image.getHeight(), 1);
        for (int point = 1; point <= 24; point++) {
            for (int i = 0; i < 5; i++) {
                int mine = Position.start().count(point);
                int theirs = Position.start().opponentCount(25 - point);
                int empty = point % 2 == 0 ? theme.even() : theme.odd();
                int expected = i < mine ? theme.mine() : i < theirs ? theme.theirs() : empty;
                assertEquals(expected, at(image, BoardPlan.checker(point, i, 5)), "point " + point + ", place " + i);
            }
        }
        assertEquals(theme.paper(), at(image, BoardPlan.bar(true, 0, 1)));
        assertEquals(theme.paper(), at(image, new Spot(2, 2)));
        assertEquals(theme.field(), at(image, new Spot(BoardPlan.x(9), BoardPlan.MIDDLE)));
    }

    @ParameterizedTest
    @MethodSource("themesAndWidths")
    void anArrowReachesItsPoint(Theme theme, int width) {
        Roll roll = Roll.of(2, 1);
        Scene scene = Scene.of(Position.start()).with(roll, PlayText.parse("13/11 6/5", Position.start(), roll));
        BufferedImage image = Raster.of(BoardPicture.of(scene, theme), width);
        for (int point : List.of(11, 5)) {
            Spot tip = BoardPlan.checker(point, 0, 1);
            assertTrue(dark(image, tip, theme.arrow()), "no arrow at " + point);
            assertTrue(!dark(image, BoardPlan.checker(3, 0, 1), theme.arrow()));
        }
    }

    /** Whether the arrow's colour is within a head's length of a place. */
    private static boolean dark(BufferedImage image, Spot near, int colour) {
        for (double dx = -12; dx <= 12; dx += 0.5) {
            for (double dy = -12; dy <= 12; dy += 0.5) {
                if (at(image, near.moved(dx, dy)) == colour) {
                    return true;
                }
            }
        }
        return false;
    }

    /** A label leaves ink where it is put, and only there. */
    @ParameterizedTest
    @MethodSource("themesAndWidths")
    void labelsAreWhereTheyAre(Theme theme, int width) {
        Shape label = new Shape.Label("x", new Spot(350, 100), "24", 40, true, true, theme.text());
        BufferedImage image = Raster.of(new Drawing(700, 200, theme.paper(), "", List.of(label)), width);
        double left = Double.MAX_VALUE;
        double right = 0;
        double top = Double.MAX_VALUE;
        double bottom = 0;
        double scale = width / 700.0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                if ((image.getRGB(x, y) & 0xFFFFFF) != theme.paper()) {
                    left = Math.min(left, x / scale);
                    right = Math.max(right, x / scale);
                    top = Math.min(top, y / scale);
                    bottom = Math.max(bottom, y / scale);
                }
            }
        }
        assertEquals(350, (left + right) / 2, 5);
        assertEquals(100, (top + bottom) / 2, 5);
        assertTrue(bottom - top > 20 && bottom - top < 45, "height " + (bottom - top));
    }
}
