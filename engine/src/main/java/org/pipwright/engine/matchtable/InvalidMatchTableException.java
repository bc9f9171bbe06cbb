package org.pipwright.engine.matchtable;

import org.pipwright.engine.PublicApi;

/** A match table that cannot be read or contradicts itself. The message is one line that says where and what to do. */
@PublicApi
public final class InvalidMatchTableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param message what is wrong and what to do
     */
    public InvalidMatchTableException(String message) {
        super(message);
    }
}
