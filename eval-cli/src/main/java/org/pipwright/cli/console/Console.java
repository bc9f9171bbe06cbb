package org.pipwright.cli.console;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;

/** The streams of one run: standard input, output and error, and whether output can carry more than ASCII. */
public final class Console {
    private static final String BOARD_SIGNS = "\u25cf\u25cb\u00b7\u2502";

    private final InputStream in;
    private final PrintWriter out;
    private final PrintWriter err;
    private final boolean unicode;

    /**
     * A console.
     *
     * @param in standard input
     * @param out standard output; the first write that fails ends the command with {@link OutputFailure}
     * @param err standard error
     * @param charset encoding of output and error
     */
    public Console(InputStream in, OutputStream out, OutputStream err, Charset charset) {
        this.in = in;
        this.out = new PrintWriter(new OutputStreamWriter(new Loud(out), charset));
        this.err = new PrintWriter(new OutputStreamWriter(err, charset), true);
        this.unicode = charset.newEncoder().canEncode(BOARD_SIGNS);
    }

    /**
     * The console of this process.
     *
     * @return standard input and output, and the current {@link System#err}
     */
    public static Console ofProcess() {
        return new Console(System.in, new FileOutputStream(FileDescriptor.out), System.err, charset());
    }

    /** What the terminal or the locale wants. Newer JDKs say so in a property of its own, older ones only at times. */
    private static Charset charset() {
        for (String property : new String[] {"stdout.encoding", "sun.stdout.encoding", "native.encoding"}) {
            String name = System.getProperty(property);
            if (name != null && Charset.isSupported(name)) {
                return Charset.forName(name);
            }
        }
        return Charset.defaultCharset();
    }

    /**
     * Standard input.
     *
     * @return the stream
     */
    public InputStream in() {
        return in;
    }

    /**
     * Standard output, for what was asked for.
     *
     * @return the writer; it is flushed when the command ends
     */
    public PrintWriter out() {
        return out;
    }

    /**
     * Standard error, for errors and progress.
     *
     * @return the writer; flushed with each line
     */
    public PrintWriter err() {
        return err;
    }

    /**
     * Whether output can carry {@code ● ○}.
     *
     * @return false where the locale's encoding has no such characters
     */
    public boolean unicode() {
        return unicode;
    }

    /** Throws where a print stream would keep silent. */
    private static final class Loud extends OutputStream {
        private final OutputStream out;

        Loud(OutputStream out) {
            this.out = out;
        }

        @Override
        public void write(int b) {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) {
            try {
                out.write(bytes, from, length);
            } catch (IOException e) {
                throw new OutputFailure(e);
            }
        }

        @Override
        public void flush() {
            try {
                out.flush();
            } catch (IOException e) {
                throw new OutputFailure(e);
            }
        }
    }
}
