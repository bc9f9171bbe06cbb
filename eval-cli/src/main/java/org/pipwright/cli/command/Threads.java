package org.pipwright.cli.command;

import org.pipwright.cli.console.UserError;

/** Numbers of threads. */
final class Threads {
    private static final int MAX = 1024;

    private Threads() {}

    /** The number asked for, or one for each core. */
    static int checked(Integer wanted) {
        if (wanted == null) {
            return Runtime.getRuntime().availableProcessors();
        }
        if (wanted < 1 || wanted > MAX) {
            throw new UserError("--threads is " + wanted + ": use 1 to " + MAX);
        }
        return wanted;
    }
}
