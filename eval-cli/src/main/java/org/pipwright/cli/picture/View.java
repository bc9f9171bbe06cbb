package org.pipwright.cli.picture;

import java.util.stream.Collectors;

/**
 * How a board is shown to somebody.
 *
 * @param pips whether the pip counts are shown; hidden they have to be counted
 * @param homeLeft whether the home of the side that looks is at the left, for those who sit at the other side of the board
 */
public record View(boolean pips, boolean homeLeft) {
    /** Pip counts shown, home at the right. */
    public static final View USUAL = new View(true, false);

    /**
     * The same with the pip counts shown.
     *
     * @return the view of answers
     */
    public View solved() {
        return new View(true, homeLeft);
    }

    /**
     * A board as this view shows it.
     *
     * @param board what {@link BoardPicture} has drawn
     * @return the drawing
     */
    public Drawing of(Drawing board) {
        Drawing shown = new Drawing(
                board.width(),
                board.height(),
                board.paper(),
                board.title(),
                board.shapes().stream()
                        .filter(shape -> pips || !shape.role().startsWith("pips "))
                        .collect(Collectors.toList()));
        return homeLeft ? HomeLeft.of(shown) : shown;
    }
}
