package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Step;

/**
 * The way of one checker through a play: the place where it starts, where it hits on the way, and where it ends.
 *
 * @param stops two or more own places, falling
 */
record Journey(List<Integer> stops) {
    /** The ways of all checkers that move, highest start first. */
    static List<Journey> of(Play play) {
        List<Step> rest = new ArrayList<>(play.steps());
        rest.sort(Comparator.comparingInt(Step::from).reversed());
        List<Journey> all = new ArrayList<>();
        while (!rest.isEmpty()) {
            all.add(next(rest));
        }
        return all;
    }

    private static Journey next(List<Step> rest) {
        Step step = rest.remove(0);
        List<Integer> stops = new ArrayList<>(List.of(step.from()));
        for (Step follower = from(step.to(), rest); follower != null; follower = from(step.to(), rest)) {
            if (step.hit()) {
                stops.add(step.to());
            }
            rest.remove(follower);
            step = follower;
        }
        stops.add(step.to());
        return new Journey(List.copyOf(stops));
    }

    private static Step from(int place, List<Step> steps) {
        return steps.stream().filter(step -> step.from() == place).findFirst().orElse(null);
    }
}
