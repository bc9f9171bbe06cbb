package org.pipwright.engine.play;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.pipwright.engine.position.Planes;

/** Steps to canonical text. */
final class PlayPrinter {
    static final String NO_PLAY = "no play";

    /** Highest start first; of one start the longest way first; then by the points hit on the way. */
    private static final Comparator<List<Integer>> ORDER = Comparator.<List<Integer>>comparingInt(path -> -path.get(0))
            .thenComparingInt(path -> path.get(path.size() - 1))
            .thenComparing(List::toString);

    private int hits;
    private final StringBuilder text = new StringBuilder();

    private PlayPrinter() {}

    static String print(List<Step> steps) {
        return steps.isEmpty() ? NO_PLAY : new PlayPrinter().join(steps);
    }

    private String join(List<Step> steps) {
        for (Step step : steps) {
            hits |= step.hit() ? 1 << step.to() : 0;
        }
        List<List<Integer>> paths = paths(steps);
        paths.sort(ORDER);
        for (int i = 0, next; i < paths.size(); i = next) {
            next = i + 1;
            while (next < paths.size() && paths.get(next).equals(paths.get(i))) {
                next++;
            }
            append(paths.get(i), next - i);
        }
        return text.toString();
    }

    /** One path a checker: where it starts, every point on its way that is hit by the play, where it ends. */
    private List<List<Integer>> paths(List<Step> steps) {
        List<Step> rest = new ArrayList<>(steps);
        rest.sort(Comparator.comparingInt(Step::from).reversed());
        List<List<Integer>> paths = new ArrayList<>();
        while (!rest.isEmpty()) {
            Step step = rest.remove(0);
            List<Integer> path = new ArrayList<>(List.of(step.from()));
            for (int next = follower(rest, step); next >= 0; next = follower(rest, step)) {
                if ((hits >> step.to() & 1) != 0) {
                    path.add(step.to());
                }
                step = rest.remove(next);
            }
            path.add(step.to());
            paths.add(path);
        }
        return paths;
    }

    /** Index of the first step that begins where another one ends, or -1. */
    private static int follower(List<Step> steps, Step before) {
        return IntStream.range(0, steps.size())
                .filter(i -> steps.get(i).from() == before.to())
                .findFirst()
                .orElse(-1);
    }

    /** Appends a path; a star marks the first mention of a point that is hit. */
    private void append(List<Integer> path, int times) {
        text.append(text.length() > 0 ? " " : "").append(place(path.get(0)));
        for (int i = 1; i < path.size(); i++) {
            int stop = path.get(i);
            boolean star = (hits >> stop & 1) != 0;
            if (star || i == path.size() - 1) {
                text.append('/').append(place(stop)).append(star ? "*" : "");
            }
            hits &= ~(1 << stop);
        }
        text.append(times > 1 ? "(" + times + ")" : "");
    }

    /** A place as plays name it. */
    static String place(int place) {
        if (place == Planes.BAR) {
            return "bar";
        }
        return place == Planes.OFF ? "off" : Integer.toString(place);
    }
}
