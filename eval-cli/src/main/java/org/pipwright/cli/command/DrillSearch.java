package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.report.DrillSource;
import org.pipwright.engine.drill.Exercise;

/** A search for exercises. */
interface DrillSearch {
    /** Where they come from. */
    DrillSource source();

    /** How many are wanted. */
    int wanted();

    /** Future rolls that the judge averages over. */
    int lookahead();

    /** Searches; fewer than wanted if there are no more. */
    List<Exercise> run(int threads);

    /** Ends the search soon, from any thread. */
    void stop();

    /** Whether it was told to end. */
    boolean stopped();

    /** What to do if too few were found. */
    String advice();
}
