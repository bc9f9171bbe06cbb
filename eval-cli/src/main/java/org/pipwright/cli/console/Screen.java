package org.pipwright.cli.console;

import java.util.Map;

/**
 * What standard output can show.
 *
 * @param columns characters that fit on a line, 0 if that does not matter, as in a file
 * @param colour whether escape sequences for colours are understood and wanted
 */
public record Screen(int columns, boolean colour) {
    /** A file or a pipe: lines of any length, no colours. */
    public static final Screen NONE = new Screen(0, false);

    /**
     * The screen of this process.
     *
     * @param environment the environment: {@code NO_COLOR}, if set to anything, asks for no colours (no-color.org), and a
     *     {@code TERM} of {@code dumb} has none
     * @param terminal whether standard output is a terminal: the launcher knows, Java itself cannot tell
     * @param columns the terminal's width, 0 if unknown
     * @return {@link #NONE} without a terminal
     */
    public static Screen of(Map<String, String> environment, boolean terminal, int columns) {
        if (!terminal) {
            return NONE;
        }
        boolean unwanted = !environment.getOrDefault("NO_COLOR", "").isEmpty()
                || environment.getOrDefault("TERM", "dumb").equals("dumb");
        return new Screen(Math.max(0, columns), !unwanted);
    }
}
