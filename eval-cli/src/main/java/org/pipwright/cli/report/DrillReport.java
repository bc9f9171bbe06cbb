package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.cli.picture.View;
import org.pipwright.engine.drill.Exercise;

/**
 * What {@code drill} has found.
 *
 * @param title what stands above the exercises
 * @param source where they come from
 * @param net the net that judged
 * @param questions the exercises in their order
 * @param reasons why their answers are right, in the same order
 * @param view how their boards are shown
 */
public record DrillReport(
        String title, DrillSource source, NetLabel net, List<Exercise> questions, List<Reasons> reasons, View view) {
    /**
     * Copies the exercises.
     *
     * @param title what stands above the exercises
     * @param source where they come from
     * @param net the net that judged
     * @param questions the exercises, at least one
     * @param reasons one for each
     * @param view how their boards are shown
     */
    public DrillReport {
        questions = List.copyOf(questions);
        reasons = List.copyOf(reasons);
    }

    /**
     * How the exercises were found, so that somebody else can find the same.
     *
     * @return a sentence or two
     */
    public String origin() {
        return source.origin(net.name());
    }
}
