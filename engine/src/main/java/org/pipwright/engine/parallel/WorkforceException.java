package org.pipwright.engine.parallel;

/** A workforce cannot be had or cannot go on; one line says why and how to mend it. */
public final class WorkforceException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * An exception.
     *
     * @param message one line
     */
    public WorkforceException(String message) {
        super(message);
    }
}
