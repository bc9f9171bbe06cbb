package org.pipwright.cli.batch;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.pipwright.cli.console.UserError;

/**
 * Lines of UTF-8, of bounded length, from a stream that may come slowly: it can say whether another line is at hand.
 * Blank lines and comments are counted and passed over. Serves one thread.
 */
final class LineReader {
    /** Bytes of the longest line that is read; the rest of a longer one is passed over. */
    static final int LONGEST = 20_000;

    /** Bytes behind which no end of a line is looked for: a device may have none. */
    static final int ENDLESS = 16 << 20;

    private final InputStream in;
    private final byte[] buffer = new byte[1 << 16];
    private int next;
    private int end;
    private byte[] line = new byte[512];
    private long number;
    private boolean endless;

    LineReader(InputStream in) {
        this.in = in;
    }

    /**
     * The next line that says something, waiting for it; null at the end of the stream.
     *
     * @throws UserError if the line before it has no end
     */
    Line read() throws IOException {
        if (endless) {
            throw new UserError("line " + number + " has more than " + String.format(Locale.ROOT, "%,d", ENDLESS)
                    + " bytes: nothing was read behind it");
        }
        while (true) {
            int length = 0;
            long passed = 0;
            boolean any = false;
            while (!endless && (next < end || fill())) {
                any = true;
                int newline = newline();
                length = take(newline, length);
                passed += newline - next;
                endless = passed > ENDLESS;
                next = newline;
                if (newline < end) {
                    next++;
                    break;
                }
            }
            if (!any) {
                return null;
            }
            number++;
            if (length > LONGEST) {
                return new Line(number, null);
            }
            String text = withoutComment(new String(line, 0, length, StandardCharsets.UTF_8).strip());
            if (!text.isEmpty()) {
                return new Line(number, text);
            }
        }
    }

    /** A comment begins with the first # at the beginning of the line or behind a blank, as in records; JSON has none. */
    private static String withoutComment(String text) {
        int sign = text.startsWith("{") ? -1 : text.indexOf('#');
        while (sign > 0 && !Character.isWhitespace(text.charAt(sign - 1))) {
            sign = text.indexOf('#', sign + 1);
        }
        return sign < 0 ? text : text.substring(0, sign).strip();
    }

    /** Whether something is known to be at hand to begin the next line with. */
    boolean waiting() {
        if (endless) {
            return false;
        }
        if (next < end) {
            return true;
        }
        try {
            return in.available() > 0;
        } catch (IOException e) {
            // Not every stream can tell: one of a pipe opened by its path cannot. Whether it can be read, reading says.
            return false;
        }
    }

    private boolean fill() throws IOException {
        next = 0;
        end = Math.max(0, in.read(buffer));
        return end > 0;
    }

    /** Place of the next newline in the buffer, or its end. */
    private int newline() {
        int at = next;
        while (at < end && buffer[at] != '\n') {
            at++;
        }
        return at;
    }

    /** Appends the buffer up to a place; returns the length of the line, of which only so much is kept. */
    private int take(int to, int length) {
        int kept = Math.min(to - next, LONGEST + 1 - length);
        if (length + kept > line.length) {
            line = Arrays.copyOf(line, Math.min(LONGEST + 1, 2 * (length + kept)));
        }
        System.arraycopy(buffer, next, line, length, kept);
        return length + kept;
    }
}
