package org.pipwright.cli.picture;

/**
 * A place in a drawing.
 *
 * @param x units from the left edge
 * @param y units from the upper edge
 */
public record Spot(double x, double y) {
    /**
     * Another place.
     *
     * @param dx units to the right
     * @param dy units down
     * @return the place moved by that
     */
    public Spot moved(double dx, double dy) {
        return new Spot(x + dx, y + dy);
    }

    /** The same place seen in a mirror that stands upright on a page so wide. */
    Spot mirrored(double width) {
        return new Spot(width - x, y);
    }
}
