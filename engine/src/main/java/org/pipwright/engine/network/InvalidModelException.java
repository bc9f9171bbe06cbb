package org.pipwright.engine.network;

import org.pipwright.engine.PublicApi;

/** A model that cannot be used: the message says in one line what is wrong and what to do. */
@PublicApi
public final class InvalidModelException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param message one line
     */
    public InvalidModelException(String message) {
        super(message);
    }
}
