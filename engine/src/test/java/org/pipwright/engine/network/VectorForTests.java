package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.fail;

import org.junit.jupiter.api.Assumptions;

/**
 * The vector kernel for tests. The build gives every test JVM the module, so its absence is a failure; only with
 * {@code -Dpipwright.test.vector=optional}, for a JVM that has no such module, are these tests reported as skipped.
 */
public final class VectorForTests {
    private static final String PROPERTY = "pipwright.test.vector";

    private VectorForTests() {}

    static Kernel kernel() {
        return required(Kernel.vectorOrNull());
    }

    /** A kernel that must be there; null where the JVM has no vector module. */
    public static <K> K required(K vector) {
        if (vector != null) {
            return vector;
        }
        String missing = "no vector kernel: this JVM runs without --add-modules jdk.incubator.vector";
        if ("optional".equals(System.getProperty(PROPERTY))) {
            return Assumptions.abort(missing);
        }
        return fail(missing + " (to skip these tests: -D" + PROPERTY + "=optional)");
    }
}
