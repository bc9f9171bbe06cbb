package org.pipwright.cli.desk;

import java.util.Optional;

/**
 * Who sits on one side of a table.
 *
 * @param name the name in the record
 * @param net the judge by whom a net plays here; empty for a person
 */
record Seat(String name, Optional<SharedJudge> net) {
    static Seat person(String name) {
        return new Seat(name, Optional.empty());
    }

    static Seat net(String name, SharedJudge judge) {
        return new Seat(name, Optional.of(judge));
    }
}
