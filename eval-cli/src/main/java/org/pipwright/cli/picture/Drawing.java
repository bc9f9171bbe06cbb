package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * Shapes on a page, later ones over earlier ones: all that the outputs know.
 *
 * @param width of the page in units
 * @param height of the page in units
 * @param paper colour of the page as 0xRRGGBB
 * @param title what the picture shows, for those who cannot see it
 * @param shapes what is on it
 */
public record Drawing(double width, double height, int paper, String title, List<Shape> shapes) {
    /**
     * Keeps the shapes.
     *
     * @param width of the page in units
     * @param height of the page in units
     * @param paper colour of the page
     * @param title what the picture shows
     * @param shapes what is on it
     */
    public Drawing {
        shapes = List.copyOf(shapes);
    }

    /**
     * Two drawings side by side.
     *
     * @param right the other
     * @return this on the left, the other on the right; paper of this one
     */
    public Drawing beside(Drawing right) {
        List<Shape> all = new ArrayList<>(shapes);
        right.shapes.forEach(shape -> all.add(shape.moved(width, 0)));
        return new Drawing(width + right.width, Math.max(height, right.height), paper, title + "; " + right.title, all);
    }

    /**
     * More shapes below.
     *
     * @param more what to add, placed on a page of its own
     * @param extra height of that page, in units
     * @return this drawing with the other page under it
     */
    public Drawing above(List<Shape> more, double extra) {
        List<Shape> all = new ArrayList<>(shapes);
        more.forEach(shape -> all.add(shape.moved(0, height)));
        return new Drawing(width, height + extra, paper, title, all);
    }
}
