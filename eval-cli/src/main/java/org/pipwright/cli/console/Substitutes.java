package org.pipwright.cli.console;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.util.Map;

/** Writes signs that an encoding lacks in ASCII; what has no such form is left to the encoder, which writes {@code ?}. */
final class Substitutes extends FilterWriter {
    private static final Map<Character, String> ASCII = Map.of(
            '\u25cf', "#",
            '\u25cb', "o",
            '\u00b7', ".",
            '\u2502', "|",
            '\u00b1', "+/-",
            '\u00d7', "x",
            '\u2013', "-",
            '\u2026', "...");

    private final CharsetEncoder encoder;

    Substitutes(Writer out, Charset charset) {
        super(out);
        encoder = charset.newEncoder();
    }

    @Override
    public void write(int sign) throws IOException {
        String other = sign < 128 || encoder.canEncode((char) sign) ? null : ASCII.get((char) sign);
        if (other == null) {
            out.write(sign);
        } else {
            out.write(other);
        }
    }

    @Override
    public void write(char[] signs, int from, int length) throws IOException {
        for (int i = from; i < from + length; i++) {
            write(signs[i]);
        }
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        write(text.toCharArray(), from, length);
    }
}
