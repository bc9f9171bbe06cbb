package org.pipwright.cli.desk;

import java.util.Optional;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Knowledge;

/**
 * Who sits on one side of a table.
 *
 * @param name the name in the record
 * @param net what a net knows that plays here; empty for a person
 * @param effort how deeply it looks; of no meaning for a person
 */
record Seat(String name, Optional<Knowledge> net, Effort effort) {
    static Seat person(String name) {
        return new Seat(name, Optional.empty(), Effort.STATIC);
    }

    static Seat net(String name, Knowledge knowledge, int lookahead) {
        return new Seat(name, Optional.of(knowledge), Effort.lookahead(lookahead));
    }
}
