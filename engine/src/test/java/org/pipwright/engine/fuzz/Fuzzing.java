package org.pipwright.engine.fuzz;

import java.io.IOException;

/** Where the fuzzer comes in: it is started with the class of a target, and calls one method for each input. */
public final class Fuzzing {
    private static Target target;

    private Fuzzing() {}

    /** Told first: the name of the target's class. */
    public static void fuzzerInitialize(String[] args) throws ReflectiveOperationException {
        target = Corpus.target(args[0]);
    }

    /** Told again and again: an input. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        target.read(data);
    }
}
