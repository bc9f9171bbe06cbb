package org.pipwright.engine.fuzz;

import java.io.IOException;
import java.util.List;

/** A reader that is given bytes from outside, good or bad. */
public interface Target {
    /**
     * Reads an input as its users do, and holds the reader to its word: whatever it takes must come out the same when it is
     * written and read again, and whatever it does not take must be refused in the way that it promises.
     *
     * @param data the input
     * @return whether it was taken
     * @throws IOException if a temporary file fails
     * @throws RuntimeException if the reader fails in any other way than it promises
     */
    boolean read(byte[] data) throws IOException;

    /**
     * Inputs to begin with.
     *
     * @return some that are taken
     */
    List<byte[]> seeds();
}
