package org.pipwright.engine.files;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.util.Locale;

/** Why reading or writing failed, in words: the message of such an exception is often only the path, or missing. */
public final class Reason {
    private Reason() {}

    /**
     * The reason.
     *
     * @param e what was thrown
     * @return a few words on one line
     */
    public static String of(IOException e) {
        if (e instanceof FileSystemException && ((FileSystemException) e).getReason() != null) {
            return ((FileSystemException) e).getReason();
        }
        if (e instanceof EOFException) {
            return "it ends too soon";
        }
        String message = e.getMessage() == null ? "" : e.getMessage();
        if (e.getClass() == IOException.class && !message.isEmpty()) {
            return message;
        }
        String kind = e.getClass().getSimpleName().replaceAll("Exception$", "").replaceAll("(?<=[a-z])(?=[A-Z])", " ");
        return kind.toLowerCase(Locale.ROOT) + (message.isEmpty() ? "" : ", " + message);
    }
}
