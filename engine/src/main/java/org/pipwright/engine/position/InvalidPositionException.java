package org.pipwright.engine.position;

import org.pipwright.engine.PublicApi;

/** A position that cannot be: the message says in one line what is wrong and what was expected. */
@PublicApi
public final class InvalidPositionException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param message one line: what is wrong and how to mend it
     */
    public InvalidPositionException(String message) {
        super(message);
    }
}
