package org.pipwright.training.settings;

/** A settings file or option that cannot be used; the message is one line that says what is wrong and what to do. */
public final class InvalidSettingsException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * An error.
     *
     * @param message one line
     */
    public InvalidSettingsException(String message) {
        super(message);
    }
}
