package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.fail;

import org.junit.jupiter.api.Assumptions;
import org.pipwright.training.device.MissingDeviceException;

/**
 * The card for tests. Where there is none they are reported as skipped, unless {@code -Dpipwright.test.card=required} says
 * that there must be one.
 */
final class CardForTests {
    private static final String PROPERTY = "pipwright.test.card";

    private CardForTests() {}

    /** Makes the card the calling thread's, or skips the test. */
    static void use() {
        try {
            Gpu.load();
            Gpu.use();
        } catch (MissingDeviceException e) {
            if ("required".equals(System.getProperty(PROPERTY))) {
                fail(e.getMessage());
            }
            Assumptions.abort(e.getMessage());
        }
    }
}
