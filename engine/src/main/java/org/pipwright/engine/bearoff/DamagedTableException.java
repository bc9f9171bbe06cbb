package org.pipwright.engine.bearoff;

/** A table file that cannot be used; the message says why in a few words. */
public final class DamagedTableException extends Exception {
    private static final long serialVersionUID = 1;

    DamagedTableException(String message) {
        super(message);
    }
}
