package org.pipwright.cli.console;

import java.io.IOException;

/** Standard output takes no more, so that there is nobody to work for. */
public final class OutputFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates one.
     *
     * @param cause what the system said
     */
    public OutputFailure(IOException cause) {
        super(cause.getMessage(), cause);
    }

    /**
     * Whether the reader has gone, as {@code head} does when it has enough; no system has an error code for Java to see,
     * so this goes by the words that Linux, macOS and Windows use.
     *
     * @return true if nobody needs to be told
     */
    public boolean readerHasGone() {
        String said = String.valueOf(getMessage());
        return said.contains("Broken pipe") || said.contains("pipe is being closed") || said.contains("pipe has been");
    }
}
