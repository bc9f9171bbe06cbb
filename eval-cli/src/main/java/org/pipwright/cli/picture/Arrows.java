package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** The arrows of a play, and outlines where its checkers will stand. */
final class Arrows {
    private static final double SHAFT = 5;
    private static final double CASING = 9;
    private static final double HEAD = 19;
    private static final double SPREAD = 9;
    /** Share of the distance that a bow rises towards the middle of the board. */
    private static final double RISE = 0.3;

    private final Theme theme;
    private final Position position;
    private final int[] left = new int[Planes.PLACES];
    private final int[] expected = new int[Planes.PLACES];
    private final int[] arrived = new int[Planes.PLACES];
    private final List<Shape> outlines = new ArrayList<>();
    private final List<Shape> arrows = new ArrayList<>();

    private Arrows(Theme theme, Position position) {
        this.theme = theme;
        this.position = position;
    }

    static List<Shape> of(Scene scene, Theme theme) {
        Arrows drawn = new Arrows(theme, scene.position());
        List<Journey> journeys = Journey.of(scene.play());
        journeys.forEach(drawn::expect);
        journeys.forEach(drawn::journey);
        List<Shape> all = new ArrayList<>(drawn.outlines);
        all.addAll(drawn.arrows);
        return all;
    }

    private void expect(Journey journey) {
        journey.stops().stream().skip(1).forEach(stop -> expected[stop]++);
    }

    private void journey(Journey journey) {
        int at = journey.stops().get(0);
        Spot from = start(at);
        for (int next : journey.stops().subList(1, journey.stops().size())) {
            Spot to = end(next);
            arrow(from, to, "from-" + at + " to-" + next);
            from = to;
            at = next;
        }
        if (at != Planes.OFF) {
            outlines.add(new Shape.Disc(
                    "arrival point-" + at, from, BoardPlan.RADIUS - 1, new Ink(Ink.NONE, theme.mineEdge(), 2, true)));
        }
    }

    /** The checker nearest the middle leaves first. */
    private Spot start(int place) {
        int stack = position.count(place);
        int index = Math.max(0, stack - 1 - left[place]++);
        return place == Planes.BAR
                ? BoardPlan.bar(true, index, stack)
                : BoardPlan.checker(place, index, Math.max(stack, 1));
    }

    private Spot end(int place) {
        if (place == Planes.OFF) {
            return BoardPlan.off(arrived[place]++);
        }
        int index = position.count(place) + arrived[place]++;
        return BoardPlan.checker(place, index, position.count(place) + expected[place]);
    }

    private void arrow(Spot from, Spot to, String role) {
        Spot control = control(from, to);
        double length = Math.hypot(to.x() - control.x(), to.y() - control.y());
        double ux = (to.x() - control.x()) / length;
        double uy = (to.y() - control.y()) / length;
        Spot neck = to.moved(-ux * (HEAD - 2), -uy * (HEAD - 2));
        Spot foot = to.moved(-ux * HEAD, -uy * HEAD);
        List<Spot> head = List.of(to, foot.moved(-uy * SPREAD, ux * SPREAD), foot.moved(uy * SPREAD, -ux * SPREAD));
        // The light casing keeps an arrow apart from checkers of either tone.
        arrows.add(new Shape.Bow("casing", from, control, neck, Ink.line(theme.paper(), CASING)));
        arrows.add(new Shape.Polygon("casing", head, Ink.both(theme.paper(), theme.paper(), CASING - SHAFT)));
        arrows.add(new Shape.Bow("arrow " + role, from, control, neck, Ink.line(theme.arrow(), SHAFT)));
        arrows.add(new Shape.Polygon("head " + role, head, Ink.fill(theme.arrow())));
    }

    /** Within a row the bow rises towards the middle; from row to row it is nearly straight. */
    private static Spot control(Spot from, Spot to) {
        Spot middle = new Spot((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
        boolean upper = from.y() < BoardPlan.MIDDLE;
        if (upper != to.y() < BoardPlan.MIDDLE) {
            return middle.moved(-20, 0);
        }
        double rise = RISE * Math.abs(from.x() - to.x()) + 12;
        return middle.moved(0, upper ? rise : -rise);
    }
}
