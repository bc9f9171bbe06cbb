package org.pipwright.cli.console;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import org.pipwright.engine.text.Printable;

/**
 * Writes what is not fit to print by its number, as {@link Printable} does: names and notes come from files of others, and
 * must not steer the terminal. Breaks of lines, tabs and, where there is colour, the sign that begins one pass.
 */
final class FitWriter extends FilterWriter {
    private static final char ESCAPE = '\u001b';

    private final boolean colour;

    FitWriter(Writer out, boolean colour) {
        super(out);
        this.colour = colour;
    }

    /** Halves of characters pass too: the other half follows, and one alone is the encoder's to replace. */
    private boolean fit(char sign) {
        return sign >= ' ' && sign < 0x7f
                || sign == '\n'
                || sign == '\r'
                || sign == '\t'
                || sign == ESCAPE && colour
                || Character.isSurrogate(sign)
                || Printable.is(sign);
    }

    @Override
    public void write(int sign) throws IOException {
        if (fit((char) sign)) {
            out.write(sign);
        } else {
            out.write(Printable.of(String.valueOf((char) sign)));
        }
    }

    @Override
    public void write(char[] signs, int from, int length) throws IOException {
        write(String.valueOf(signs, from, length), 0, length);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        int begin = from;
        for (int i = from; i < from + length; i++) {
            if (!fit(text.charAt(i))) {
                out.write(text, begin, i - begin);
                write(text.charAt(i));
                begin = i + 1;
            }
        }
        out.write(text, begin, from + length - begin);
    }
}
