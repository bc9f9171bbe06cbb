package org.pipwright.engine.files;

/** A {@link WorkFile} that is damaged or belongs to other work; the message says so in one line and how to mend it. */
public final class InvalidWorkFileException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    InvalidWorkFileException(String message) {
        super(message);
    }
}
