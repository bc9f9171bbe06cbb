package org.pipwright.cli.console;

/** Something the user can mend: the message says in one line what is wrong and how. */
public final class UserError extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param message one line
     */
    public UserError(String message) {
        super(message);
    }
}
