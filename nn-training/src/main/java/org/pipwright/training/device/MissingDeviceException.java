package org.pipwright.training.device;

/** There is no such device to train on, or what it needs to run is missing; the message says what, in one line. */
public final class MissingDeviceException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * An exception.
     *
     * @param message what is missing
     */
    public MissingDeviceException(String message) {
        super(message);
    }
}
