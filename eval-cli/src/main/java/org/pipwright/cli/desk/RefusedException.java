package org.pipwright.cli.desk;

/** Something that cannot be done at a table now; the message says why, in words for whoever sits there. */
final class RefusedException extends RuntimeException {
    private static final long serialVersionUID = 1;

    RefusedException(String message) {
        super(message);
    }
}
