package org.pipwright.engine.record;

import org.pipwright.engine.PublicApi;

/** A record that cannot be read or breaks the rules; the message says in one line where, what and what was expected. */
@PublicApi
public final class InvalidRecordException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int line;
    private final int column;

    /**
     * Creates one.
     *
     * @param line where, 1 for the first
     * @param column where in the line, 1 for the first character
     * @param problem what is wrong and what was expected, in one line
     */
    public InvalidRecordException(int line, int column, String problem) {
        super("line " + line + ", column " + column + ": " + problem);
        this.line = line;
        this.column = column;
    }

    /**
     * The line at fault.
     *
     * @return 1 for the first
     */
    public int line() {
        return line;
    }

    /**
     * The column at fault.
     *
     * @return 1 for the first character
     */
    public int column() {
        return column;
    }
}
