package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.pipwright.cli.console.Console;

/** One command line run inside this JVM: exit code, standard output and standard error. */
record Run(int code, String out, String err) {
    static Run of(String... args) {
        return with(Commands.ALL, "", StandardCharsets.UTF_8, args);
    }

    static Run withInput(String input, String... args) {
        return with(Commands.ALL, input, StandardCharsets.UTF_8, args);
    }

    static Run in(Charset charset, String... args) {
        return with(Commands.ALL, "", charset, args);
    }

    /** Builds the standard tables, or whichever command is the first to need them would say that it does. */
    private static final class Tables {
        static final int BUILT =
                with("", StandardCharsets.UTF_8, Commands.ALL, "tables").code();
    }

    static Run with(Map<String, Class<?>> commands, String input, Charset charset, String... args) {
        assertEquals(0, Tables.BUILT);
        return with(input, charset, commands, args);
    }

    private static Run with(String input, Charset charset, Map<String, Class<?>> commands, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        ByteArrayInputStream in = new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8));
        int code = new Cli(new Console(in, out, err, charset), commands).run(args);
        return new Run(code, text(out, charset), text(err, charset));
    }

    private static String text(ByteArrayOutputStream bytes, Charset charset) {
        return bytes.toString(charset).replace("\r\n", "\n");
    }
}
