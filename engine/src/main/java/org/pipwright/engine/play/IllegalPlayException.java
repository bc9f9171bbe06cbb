package org.pipwright.engine.play;

import org.pipwright.engine.PublicApi;

/** A play that the position and roll do not allow, or that cannot be read: the message says in one line why. */
@PublicApi
public final class IllegalPlayException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param message one line: what is wrong and how to mend it
     */
    public IllegalPlayException(String message) {
        super(message);
    }
}
