package org.pipwright.engine.reduced;

/** A file is not the table it should be; the message says in one line what is wrong with it. */
public final class InvalidTableException extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    /**
     * With a reason.
     *
     * @param message one line
     */
    public InvalidTableException(String message) {
        super(message);
    }
}
