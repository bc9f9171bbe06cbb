package org.pipwright.cli;

import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** What a test needs of the machine. */
final class Needed {
    /** System property that says that the machine has all of it, so that nothing may be skipped. */
    private static final String COMPLETE = "pipwright.test.complete";

    private Needed() {}

    /** Skips the test for want of something, with the reason; fails it where all is said to be there. */
    static <T> T missing(String reason) {
        if (Boolean.getBoolean(COMPLETE)) {
            return Assertions.fail(reason);
        }
        return Assumptions.abort(reason);
    }
}
