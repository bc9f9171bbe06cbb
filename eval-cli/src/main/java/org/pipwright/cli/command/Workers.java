package org.pipwright.cli.command;

import java.util.function.Function;
import java.util.function.IntFunction;
import org.pipwright.engine.parallel.Workforce;

/**
 * Who does the work of a command.
 *
 * @param threads of this machine
 * @param workforce other machines; null if these threads are to work
 */
record Workers(int threads, Workforce workforce) {
    /** Has them do it: here, or else there. */
    <R> R have(IntFunction<R> here, Function<Workforce, R> there) {
        return workforce == null ? here.apply(threads) : there.apply(workforce);
    }
}
