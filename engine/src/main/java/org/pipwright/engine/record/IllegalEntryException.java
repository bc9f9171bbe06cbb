package org.pipwright.engine.record;

import org.pipwright.engine.PublicApi;

/** Something that cannot happen at this point of a game. */
@PublicApi
public final class IllegalEntryException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    IllegalEntryException(String message) {
        super(message);
    }
}
