package org.pipwright.bench.strength;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.pipwright.engine.play.Play;
import org.pipwright.training.report.PrintedOpening;

/**
 * One roll of the opening table.
 *
 * @param opening what sources say
 * @param chosen the play found best
 * @param equity its equity, in points per game
 * @param error standard error of that equity; empty if it is no rollout's
 * @param cost equity of the best named play less that of the chosen one, 0 if it is the chosen one
 * @param costError standard error of that difference; empty if it is no rollout's
 */
record OpeningLine(
        PrintedOpening opening,
        Play chosen,
        double equity,
        OptionalDouble error,
        double cost,
        OptionalDouble costError) {

    boolean agrees() {
        return opening.isAllowed(chosen);
    }

    /** As in {@code same}, {@code close}, {@code differs}. */
    String verdict() {
        if (opening.isBest(chosen)) {
            return "same";
        }
        return agrees() ? "close" : "differs";
    }

    String named() {
        return opening.best().stream().map(Play::toString).collect(Collectors.joining(" or "));
    }

    static long agreeing(List<OpeningLine> lines) {
        return lines.stream().filter(OpeningLine::agrees).count();
    }
}
