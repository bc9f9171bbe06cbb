package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.opentest4j.AssertionFailedError;
import org.opentest4j.TestAbortedException;

class NeededTest {
    private static final String COMPLETE = "pipwright.test.complete";

    private final String before = System.getProperty(COMPLETE, "false");

    @AfterEach
    void restore() {
        System.setProperty(COMPLETE, before);
    }

    @Test
    void aSkipIsAFailureWhereNothingMayBeMissing() {
        System.setProperty(COMPLETE, "false");
        assertEquals(
                "no such thing",
                assertThrows(TestAbortedException.class, () -> Needed.missing("no such thing"))
                        .getMessage()
                        .replaceFirst("^Assumption failed: ", ""));
        System.setProperty(COMPLETE, "true");
        assertThrows(AssertionFailedError.class, () -> Needed.missing("no such thing"));
    }
}
