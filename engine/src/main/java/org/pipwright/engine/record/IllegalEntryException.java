package org.pipwright.engine.record;

/** Something that cannot happen at this point of a game. */
public final class IllegalEntryException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    IllegalEntryException(String message) {
        super(message);
    }
}
