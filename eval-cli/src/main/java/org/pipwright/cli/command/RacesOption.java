package org.pipwright.cli.command;

import org.pipwright.engine.judge.Effort;
import picocli.CommandLine.Option;

/** Whether races beyond the tables are simulated. */
final class RacesOption {
    @Option(
            names = "--no-simulation",
            description =
                    "Leave races beyond the exact tables to the net. As a rule they are simulated, which is far more"
                            + " accurate and takes some hundredths of a second each.")
    private boolean unsimulated;

    boolean simulated() {
        return !unsimulated;
    }

    /** An effort with this said of races. */
    Effort on(Effort effort) {
        return effort.withRaces(simulated());
    }
}
