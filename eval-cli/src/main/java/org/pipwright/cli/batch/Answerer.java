package org.pipwright.cli.batch;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;

/** Answers requests, one after another; each thread has its own. */
public interface Answerer extends AutoCloseable {
    /**
     * Answers a request.
     *
     * @param request what was asked
     * @param line number of its line
     * @param json where to write one object
     * @throws IOException if the generator cannot write
     * @throws org.pipwright.cli.console.UserError if the request has no answer; nothing was written then
     */
    void answer(Request request, long line, JsonGenerator json) throws IOException;

    @Override
    default void close() {
        // Most have nothing to let go.
    }
}
