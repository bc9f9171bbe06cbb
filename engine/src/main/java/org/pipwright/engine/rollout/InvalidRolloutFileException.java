package org.pipwright.engine.rollout;

/** The file of a rollout cannot be used; the message says in one line why and what to do. */
public final class InvalidRolloutFileException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param message one line
     */
    public InvalidRolloutFileException(String message) {
        super(message);
    }
}
