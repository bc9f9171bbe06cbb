package org.pipwright.cli.console;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.Charset;

/** The streams of one run: standard input, output and error, and whether output can carry more than ASCII. */
public final class Console {
    private static final String BOARD_SIGNS = "\u25cf\u25cb\u00b7\u2502";

    /** System property that the launcher sets if standard output is a terminal. */
    private static final String TERMINAL = "pipwright.terminal.out";

    private final InputStream in;
    private final Page out;
    private final PrintWriter err;
    private final boolean unicode;

    /**
     * A console whose output is a file or a pipe.
     *
     * @param in standard input
     * @param out standard output; the first write that fails ends the command with {@link OutputFailure}
     * @param err standard error
     * @param charset encoding of output and error
     */
    public Console(InputStream in, OutputStream out, OutputStream err, Charset charset) {
        this(in, out, err, charset, Screen.NONE);
    }

    /**
     * A console.
     *
     * @param in standard input
     * @param out standard output; the first write that fails ends the command with {@link OutputFailure}
     * @param err standard error
     * @param charset encoding of output and error
     * @param screen what output can show
     */
    public Console(InputStream in, OutputStream out, OutputStream err, Charset charset, Screen screen) {
        this.in = in;
        this.unicode = charset.newEncoder().canEncode(BOARD_SIGNS);
        this.out = new Page(new FitWriter(writer(new Loud(out), charset), screen.colour()), screen);
        this.err = new PrintWriter(new FitWriter(writer(err, charset), false), true);
    }

    private Writer writer(OutputStream stream, Charset charset) {
        Writer writer = new OutputStreamWriter(stream, charset);
        return unicode ? writer : new Substitutes(writer, charset);
    }

    /**
     * The console of this process.
     *
     * @return standard input and output, and the current {@link System#err}
     */
    public static Console ofProcess() {
        Screen screen =
                Screen.of(System.getenv(), Boolean.getBoolean(TERMINAL), Integer.getInteger("pipwright.columns", 0));
        return new Console(System.in, new FileOutputStream(FileDescriptor.out), System.err, charset(), screen);
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
     * What standard output can show.
     *
     * @return the screen
     */
    public Screen screen() {
        return out.screen();
    }

    /**
     * What a writer can show, if it is the output of a console.
     *
     * @param out any writer
     * @return its screen; {@link Screen#NONE} of other writers
     */
    public static Screen screen(PrintWriter out) {
        return out instanceof Page page ? page.screen() : Screen.NONE;
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
