package org.pipwright.cli.picture;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** A board whose home is at the lower left, for those who sit at its other side. */
public final class HomeLeft {
    /** What stands beside the board, where left and right are not exchanged: it moves to the other side as a whole. */
    private static final Set<String> BESIDE =
            Set.of("sign", "pips", "turn", "away", "off", "slab", "crawford", "cube", "cube-value");

    /** It stands above the board and stays where it is. */
    private static final String HEADING = "title";

    private HomeLeft() {}

    private static Shape shape(Shape shape) {
        String role = shape.role().split(" ")[0];
        if (BESIDE.contains(role)) {
            return shape.moved(BoardPlan.MARGIN - BoardPlan.PANEL, 0);
        }
        return role.equals(HEADING) ? shape : shape.mirrored(BoardPlan.WIDTH);
    }

    /**
     * The same board in a mirror.
     *
     * @param board what {@link BoardPicture} has drawn
     * @return its mirror image; all words and numbers read as before
     */
    public static Drawing of(Drawing board) {
        List<Shape> shapes = board.shapes().stream().map(HomeLeft::shape).collect(Collectors.toList());
        return new Drawing(board.width(), board.height(), board.paper(), board.title(), shapes);
    }
}
