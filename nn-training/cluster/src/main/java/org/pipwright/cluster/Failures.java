package org.pipwright.cluster;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What Spark says of a failure over many lines, in one. */
final class Failures {
    /** Of the last failure of the task that failed most often: exception and message, before its stack. */
    private static final Pattern LAST =
            Pattern.compile("(?s)Lost task [^:]*: (.*?)(?:\\R\\s+at |\\RDriver stacktrace|$)");

    private Failures() {}

    static String line(Throwable failure) {
        String message = String.valueOf(failure.getMessage());
        Matcher last = LAST.matcher(message);
        String said = last.find() ? last.group(1) : message.lines().findFirst().orElse(message);
        return said.strip().replaceAll("\\s*\\R\\s*", " ");
    }
}
