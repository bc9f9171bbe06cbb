package org.pipwright.engine.rollout;

/** A file of rollout sums cannot be used; the message says in one line why and what to do. */
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
