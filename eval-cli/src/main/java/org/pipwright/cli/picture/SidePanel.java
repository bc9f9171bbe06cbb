package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.position.Position;

/** Beside the board: pip counts, who is on roll, the score, checkers borne off on their edges, the cube. */
final class SidePanel {
    private static final double LINE = 25;
    private static final double INDENT = 27;
    private static final double CUBE = 42;
    private static final double OWNED = 56;
    private static final double SLAB = 5;
    private static final double SLAB_PITCH = 7.2;
    private static final double SLAB_HEIGHT = 18;

    private final Scene scene;
    private final Theme theme;
    private final List<Shape> shapes = new ArrayList<>();

    private SidePanel(Scene scene, Theme theme) {
        this.scene = scene;
        this.theme = theme;
    }

    static List<Shape> of(Scene scene, Theme theme) {
        SidePanel panel = new SidePanel(scene, theme);
        panel.side(scene.position().swapped(), false);
        panel.side(scene.position(), true);
        panel.middle();
        return panel.shapes;
    }

    /** Lines from the outer edge towards the middle. */
    private void side(Position seen, boolean mine) {
        double step = mine ? -LINE : LINE;
        double y = mine ? BoardPlan.HEIGHT - BoardPlan.FIELD_TOP - 16 : BoardPlan.FIELD_TOP + 16;
        String who = mine ? "mine" : "theirs";
        shapes.add(new Shape.Disc("sign " + who, new Spot(BoardPlan.PANEL + 10, y), 9, ink(mine)));
        text("pips " + who, BoardPlan.PANEL + INDENT, y, seen.pips() + " pips", true);
        if (mine != scene.played() && !seen.finished()) {
            y += step;
            text("turn " + who, BoardPlan.PANEL, y, "on roll", false);
        }
        if (scene.score() != null) {
            y += step;
            int away = mine ? scene.score().mine() : scene.score().theirs();
            text("away " + who, BoardPlan.PANEL, y, away + " away", false);
        }
        if (seen.borneOff() > 0) {
            y += step;
            text("off " + who, BoardPlan.PANEL, y, seen.borneOff() + " off", false);
            slabs(seen.borneOff(), y + step, mine);
        }
    }

    private void slabs(int count, double y, boolean mine) {
        for (int i = 0; i < count; i++) {
            Spot at = new Spot(BoardPlan.PANEL + i * SLAB_PITCH + 1, y - SLAB_HEIGHT / 2);
            String role = "slab " + (mine ? "mine" : "theirs");
            shapes.add(new Shape.Box(role, at, SLAB, SLAB_HEIGHT, 2, ink(mine)));
        }
    }

    private void middle() {
        if (scene.score() != null && scene.score().crawford()) {
            text("crawford", BoardPlan.PANEL, BoardPlan.MIDDLE, "Crawford", true);
        } else if (scene.cube() != null) {
            cube(scene.cube());
        }
    }

    /** Nearer to its owner and in the owner's tone; a centred cube has the colour of the page. */
    private void cube(CubeState cube) {
        Ink ink;
        int digits;
        double y = BoardPlan.MIDDLE;
        switch (cube.owner()) {
            case ME:
                y += OWNED;
                ink = ink(true);
                digits = theme.onMine();
                break;
            case THEM:
                y -= OWNED;
                ink = ink(false);
                digits = theme.onTheirs();
                break;
            default:
                ink = Ink.both(theme.paper(), theme.text(), 2);
                digits = theme.text();
        }
        String number = Integer.toString(cube.value());
        double width = Math.max(CUBE, number.length() * 13 + 12);
        Spot at = new Spot(BoardPlan.PANEL + 1, y - CUBE / 2);
        shapes.add(new Shape.Box("cube " + cube.owner().name().toLowerCase(Locale.ROOT), at, width, CUBE, 9, ink));
        shapes.add(new Shape.Label("cube-value", at.moved(width / 2, CUBE / 2), number, 22, true, true, digits));
    }

    private Ink ink(boolean mine) {
        return mine ? Ink.both(theme.mine(), theme.mineEdge(), 1.5) : Ink.both(theme.theirs(), theme.theirsEdge(), 1.5);
    }

    private void text(String role, double x, double y, String words, boolean bold) {
        shapes.add(new Shape.Label(role, new Spot(x, y), words, BoardPlan.LETTER, bold, false, theme.text()));
    }
}
