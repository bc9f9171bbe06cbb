package org.pipwright.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.pipwright.cli.console.Console;

/**
 * One command line run inside this JVM.
 *
 * @param code its exit code
 * @param out standard output
 * @param err standard error
 */
public record CommandRun(int code, String out, String err) {
    /** Runs a command line, words apart by blanks, with some standard input. */
    public static CommandRun of(String input, String line) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        ByteArrayInputStream in = new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8));
        int code = new Cli(new Console(in, out, err, StandardCharsets.UTF_8), Commands.ALL).run(line.split(" "));
        return new CommandRun(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
