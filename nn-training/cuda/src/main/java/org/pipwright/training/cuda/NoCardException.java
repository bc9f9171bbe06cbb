package org.pipwright.training.cuda;

/** There is no card to train on, or what it needs to run is missing; the message says what. */
public final class NoCardException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * An exception.
     *
     * @param message what is missing, in one line
     */
    public NoCardException(String message) {
        super(message);
    }
}
