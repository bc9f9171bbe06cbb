package org.pipwright.cli.picture;

/**
 * The colours of a picture, each as 0xRRGGBB. The two sides differ in lightness as well as in hue, so that they stay
 * apart for every kind of colour vision and on every printer.
 *
 * @param paper the page
 * @param field behind the points
 * @param fieldEdge outline of the field
 * @param odd the odd points
 * @param even the even points
 * @param mine checkers of the side on roll
 * @param mineEdge their outline
 * @param theirs checkers of the opponent
 * @param theirsEdge their outline
 * @param text words and numbers
 * @param arrow arrows of a play
 * @param mark highlighted points
 */
public record Theme(
        int paper,
        int field,
        int fieldEdge,
        int odd,
        int even,
        int mine,
        int mineEdge,
        int theirs,
        int theirsEdge,
        int text,
        int arrow,
        int mark) {
    /** For screens. */
    public static final Theme LIGHT = new Theme(
            0xFCFBF8, 0xF1EEE7, 0xE3DED3, 0xD4DDD9, 0xE2DACB, 0x23485F, 0x12293A, 0xF8E6BC, 0x80622A, 0x2B323B,
            0xA8322A, 0x1E7A5F);

    /** For paper: no colours, little ink. */
    public static final Theme PRINT = new Theme(
            0xFFFFFF, 0xFFFFFF, 0x8A8A8A, 0xDADADA, 0xF0F0F0, 0x3A3A3A, 0x000000, 0xFFFFFF, 0x000000, 0x000000,
            0x000000, 0x000000);

    /**
     * The same colours with the sides exchanged, so that a player keeps a tone while the side on roll changes.
     *
     * @return mine and theirs exchanged
     */
    public Theme swapped() {
        return new Theme(paper, field, fieldEdge, odd, even, theirs, theirsEdge, mine, mineEdge, text, arrow, mark);
    }

    /** Writing on a checker of the side on roll: light on the darker tone, dark on the lighter one. */
    int onMine() {
        return lightness(mine) < lightness(theirs) ? theirs : mineEdge;
    }

    /** Writing on a checker of the opponent. */
    int onTheirs() {
        return lightness(theirs) < lightness(mine) ? mine : theirsEdge;
    }

    /** Red, green and blue by their shares of luminance (Rec. 709), a thousand times. */
    private static int lightness(int colour) {
        return 213 * (colour >> 16 & 0xFF) + 715 * (colour >> 8 & 0xFF) + 72 * (colour & 0xFF);
    }
}
