package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.Exercise;

/**
 * What {@code drill} has found.
 *
 * @param settings what decided which exercises were found
 * @param net the net that judged
 * @param weaker whose mistakes they are
 * @param questions the exercises in their order
 * @param reasons why their answers are right, in the same order
 */
public record DrillReport(
        DrillSettings settings, NetLabel net, Contestant weaker, List<Exercise> questions, List<Reasons> reasons) {
    /**
     * Copies the exercises.
     *
     * @param settings what decided which exercises were found
     * @param net the net that judged
     * @param weaker whose mistakes they are
     * @param questions the exercises, at least one
     * @param reasons one for each
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
        String unit = settings.theme().cube() ? " points (scaled to a single game)" : " points";
        return "Judged by net " + net.name() + ", lookahead " + settings.lookahead() + ". The weaker player is "
                + weaker.name() + ", who gives away " + Numbers.size(settings.cost()) + unit
                + " or more in each position; the second best choice gives away " + Numbers.size(settings.margin())
                + " or more. Seed " + settings.seed() + ".";
    }
}
