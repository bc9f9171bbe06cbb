package org.pipwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Set;
import org.pipwright.cli.console.OutputFailure;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.matchtable.InvalidMatchTableException;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.position.InvalidPositionException;
import org.pipwright.engine.text.Excerpt;
import org.pipwright.engine.text.Printable;

/** From what went wrong to the one line that is shown. Whatever is not known to be the user's is a bug of ours. */
final class ErrorLines {
    private static final Set<Class<?>> USERS = Set.of(
            UserError.class,
            InvalidPositionException.class,
            IllegalPlayException.class,
            InvalidModelException.class,
            InvalidMatchTableException.class,
            InvalidWorkFileException.class,
            WorkforceException.class);

    private ErrorLines() {}

    /** Whether the user can mend it. */
    static boolean isUsers(Throwable e) {
        return USERS.contains(e.getClass())
                || e instanceof IOException
                || e instanceof UncheckedIOException
                || e instanceof OutputFailure;
    }

    /** The line, without {@code pipwright:} before it. */
    static String of(Throwable e) {
        if (e instanceof OutputFailure) {
            return "cannot write to standard output: " + e.getMessage();
        }
        if (e instanceof UncheckedIOException) {
            return of(e.getCause());
        }
        if (e instanceof FileSystemException) {
            return ofFile((FileSystemException) e);
        }
        if (e instanceof IOException) {
            return "reading or writing failed: " + e.getMessage();
        }
        if (isUsers(e)) {
            return oneLine(e.getMessage());
        }
        if (e instanceof OutOfMemoryError) {
            return "out of memory: allow more with PIPWRIGHT_JAVA_OPTIONS=-Xmx4g";
        }
        return "Pipwright itself failed (" + oneLine(e.toString()) + "): that is a bug; --trace shows where";
    }

    private static String ofFile(FileSystemException e) {
        String file = "'" + Excerpt.ofPath(String.valueOf(e.getFile())) + "'";
        if (e instanceof NoSuchFileException) {
            return "no file or folder " + file + ": check the path";
        }
        if (e instanceof AccessDeniedException) {
            return "no permission to use " + file + ": choose another place";
        }
        return "cannot use " + file + ": "
                + (e.getReason() == null ? e.getClass().getSimpleName() : e.getReason());
    }

    static String oneLine(String text) {
        return Printable.of(String.valueOf(text).strip().replaceAll("\\s*[\\r\\n]+\\s*", " "));
    }
}
