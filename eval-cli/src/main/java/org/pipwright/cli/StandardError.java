package org.pipwright.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.lang.reflect.Constructor;
import java.nio.charset.Charset;

/**
 * Takes back the real standard error when the launcher has put a filter on it.
 *
 * <p>For long commands the launcher filters out the line that the JVM prints about its incubating vector module,
 * and hands over the unfiltered stream as a file descriptor of its own, so that progress bars still write straight
 * to the terminal. Opening {@code /dev/fd/N} instead would not do: on a redirected file that starts a second write
 * position, and output written through the first one would overwrite it.
 */
final class StandardError {

    /** Number of the open file descriptor that leads to the unfiltered standard error. */
    static final String DESCRIPTOR_PROPERTY = "pipwright.stderr.fd";

    private StandardError() {}

    /** Redirects {@link System#err} if the launcher asks for it; leaves it alone where that is not possible. */
    static void install() {
        Integer number = Integer.getInteger(DESCRIPTOR_PROPERTY);
        if (number == null) {
            return;
        }
        try {
            // The JDK has no public way to use an inherited descriptor; the launcher opens java.io for this.
            Constructor<FileDescriptor> ofNumber = FileDescriptor.class.getDeclaredConstructor(int.class);
            ofNumber.setAccessible(true);
            FileOutputStream unfiltered = new FileOutputStream(ofNumber.newInstance(number));
            System.setErr(new PrintStream(unfiltered, true, Charset.forName(System.getProperty("native.encoding"))));
        } catch (ReflectiveOperationException | RuntimeException e) {
            // The filtered stream carries the same lines.
        }
    }
}
