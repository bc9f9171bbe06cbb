package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.report.DrillSource;
import org.pipwright.engine.drill.DrillListener;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.judge.Knowledge;

/**
 * A search for exercises, which lacks only what it is to judge with.
 *
 * @param source where they come from
 * @param wanted how many are wanted
 * @param from what they are looked for in, for the display of progress
 * @param lookahead future rolls that the judge averages over
 * @param advice what to do if too few are found
 * @param finder the search itself
 */
record DrillSearch(DrillSource source, int wanted, String from, int lookahead, String advice, Finder finder) {
    /** Searches; finds fewer than wanted if there are no more. */
    @FunctionalInterface
    interface Finder {
        List<Exercise> find(Knowledge knowledge, DrillListener listener, Workers workers);
    }
}
