package org.pipwright.cli.picture;

/**
 * How a shape is coloured.
 *
 * @param fill colour inside as 0xRRGGBB, or {@link #NONE}
 * @param edge colour of the outline as 0xRRGGBB, or {@link #NONE}
 * @param width width of the outline in units
 * @param dashed whether the outline is broken
 */
public record Ink(int fill, int edge, double width, boolean dashed) {
    /** No colour at all. */
    public static final int NONE = -1;

    /** Length of a dash, and of the gap after it, in units. */
    static final double DASH = 5;

    /**
     * A fill without an outline.
     *
     * @param colour 0xRRGGBB
     * @return the ink
     */
    public static Ink fill(int colour) {
        return new Ink(colour, NONE, 0, false);
    }

    /**
     * A line without a fill.
     *
     * @param colour 0xRRGGBB
     * @param width in units
     * @return the ink
     */
    public static Ink line(int colour, double width) {
        return new Ink(NONE, colour, width, false);
    }

    /**
     * A fill with an outline.
     *
     * @param fill 0xRRGGBB
     * @param edge 0xRRGGBB
     * @param width of the outline in units
     * @return the ink
     */
    public static Ink both(int fill, int edge, double width) {
        return new Ink(fill, edge, width, false);
    }
}
