package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** A scene on a board, seen from the side on roll, whose home is at the lower right. */
public final class BoardPicture {
    private static final int POINTS = 24;
    private static final double TITLE = 30;
    /** Stacks above this are counted by a number on the last checker. */
    private static final int EASY = 5;

    private final Scene scene;
    private final Theme theme;
    private final List<Shape> shapes = new ArrayList<>();

    private BoardPicture(Scene scene, Theme theme) {
        this.scene = scene;
        this.theme = theme;
    }

    /**
     * Draws a scene.
     *
     * @param scene what to show
     * @param theme its colours
     * @return the drawing
     */
    public static Drawing of(Scene scene, Theme theme) {
        return new BoardPicture(scene, theme).drawing();
    }

    /**
     * The board that every scene without marks has in common.
     *
     * @param theme its colours
     * @return the drawing: fields, points and their numbers
     */
    public static Drawing empty(Theme theme) {
        BoardPicture board = new BoardPicture(Scene.of(Position.start()), theme);
        board.board();
        return new Drawing(BoardPlan.WIDTH, BoardPlan.HEIGHT, theme.paper(), "", board.shapes);
    }

    /**
     * Draws what stands on a board, to be put over {@link #empty}.
     *
     * @param scene what to show; it has no marks and no title
     * @param theme its colours
     * @return the drawing without the board itself
     */
    public static Drawing pieces(Scene scene, Theme theme) {
        BoardPicture picture = new BoardPicture(scene, theme);
        picture.scene();
        return picture.page();
    }

    private Drawing drawing() {
        board();
        scene();
        return page();
    }

    private void board() {
        half(BoardPlan.MARGIN);
        half(BoardPlan.RIGHT_HALF);
        for (int point = 1; point <= POINTS; point++) {
            point(point);
        }
    }

    private void scene() {
        for (int point = 1; point <= POINTS; point++) {
            stack(point, scene.position().count(point), true);
            stack(point, scene.position().opponentCount(POINTS + 1 - point), false);
        }
        stack(Planes.BAR, scene.position().count(Planes.BAR), true);
        stack(Planes.BAR, scene.position().opponentCount(Planes.BAR), false);
        shapes.addAll(SidePanel.of(scene, theme));
        if (scene.roll() != null) {
            shapes.addAll(Dice.of(scene.roll(), theme));
        }
        if (scene.play() != null) {
            shapes.addAll(Arrows.of(scene, theme));
        }
    }

    private Drawing page() {
        String title = Description.of(scene);
        Drawing board = new Drawing(BoardPlan.WIDTH, BoardPlan.HEIGHT, theme.paper(), title, shapes);
        if (scene.title() == null) {
            return board;
        }
        Spot at = new Spot(BoardPlan.MARGIN, BoardPlan.MARGIN + TITLE / 2);
        Shape heading = new Shape.Label(
                "title", at, Caption.tidy(scene.title()), BoardPlan.LETTER + 1, true, false, theme.text());
        return new Drawing(BoardPlan.WIDTH, TITLE, theme.paper(), title, List.of(heading))
                .above(shapes, BoardPlan.HEIGHT);
    }

    private void half(double left) {
        Spot at = new Spot(left, BoardPlan.FIELD_TOP);
        Ink ink = Ink.both(theme.field(), theme.fieldEdge(), 1);
        shapes.add(new Shape.Box("field", at, BoardPlan.HALF_WIDTH, BoardPlan.FIELD_HEIGHT, 20, ink));
    }

    private void point(int point) {
        boolean marked = scene.marks().contains(point);
        int tone = point % 2 == 0 ? theme.even() : theme.odd();
        Ink ink = marked ? Ink.both(tone, theme.mark(), 4) : Ink.fill(tone);
        Spot at = new Spot(BoardPlan.x(point) - BoardPlan.SLOT / 2, BoardPlan.slotTop(point));
        String role = (marked ? "point mark" : "point") + " point-" + point;
        shapes.add(new Shape.Box(role, at, BoardPlan.SLOT, BoardPlan.SLOT_LENGTH, BoardPlan.SLOT / 2, ink));
        number(point, marked);
    }

    /** A number in a pill says the same as the colour of a mark does. */
    private void number(int point, boolean marked) {
        double outside = BoardPlan.FIELD_TOP / 2 + 3;
        Spot at = new Spot(BoardPlan.x(point), BoardPlan.upper(point) ? outside : BoardPlan.HEIGHT - outside);
        if (marked) {
            shapes.add(new Shape.Box("pill", at.moved(-16, -12), 32, 24, 12, Ink.fill(theme.mark())));
        }
        int colour = marked ? theme.paper() : theme.text();
        shapes.add(new Shape.Label("number", at, Integer.toString(point), BoardPlan.LETTER, marked, true, colour));
    }

    private void stack(int place, int count, boolean mine) {
        String role = "checker " + (mine ? "mine" : "theirs") + (place == Planes.BAR ? " bar" : " point-" + place);
        Ink ink = mine ? Ink.both(theme.mine(), theme.mineEdge(), 2) : Ink.both(theme.theirs(), theme.theirsEdge(), 2);
        Spot at = null;
        for (int i = 0; i < count; i++) {
            at = place == Planes.BAR ? BoardPlan.bar(mine, i, count) : BoardPlan.checker(place, i, count);
            shapes.add(new Shape.Disc(role, at, BoardPlan.RADIUS - 1, ink));
        }
        if (count > EASY) {
            int colour = mine ? theme.onMine() : theme.onTheirs();
            String number = Integer.toString(count);
            shapes.add(new Shape.Label("count", at, number, BoardPlan.LETTER, true, true, colour));
        }
    }
}
