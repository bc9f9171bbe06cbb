package org.pipwright.training.run;

/** A run folder that cannot be used; the message is one line that says what is wrong and what to do. */
public final class InvalidRunException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * An error.
     *
     * @param message one line
     */
    public InvalidRunException(String message) {
        super(message);
    }
}
