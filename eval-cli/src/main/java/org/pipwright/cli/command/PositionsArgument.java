package org.pipwright.cli.command;

import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.pipwright.cli.batch.Batch;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** One position, or a file of many. */
final class PositionsArgument {
    private static final String STDIN = "-";

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Parameters(
            paramLabel = "POSITION",
            arity = "0..*",
            description = {PositionArgument.TEXT, PositionArgument.OTHER_FORMS})
    private List<String> words = new ArrayList<>();

    @Option(
            names = "--batch",
            paramLabel = "FILE",
            description = "Instead of one position: read many, one a line, from a file or from - (standard input), and"
                    + " answer each in order, with a line of JSON or as --format says. A line is a position, followed by a"
                    + " roll where one is needed, or JSON: {\"position\":\"start\", \"roll\":\"3-1\"}. Blank lines and what"
                    + " follows a # are ignored. A line that cannot be answered gets its number and the error for an"
                    + " answer, and makes the exit code 2.")
    private String batch;

    @Mixin
    private PlayOnOption on;

    /** Whether many positions are asked about. */
    boolean many() {
        if (batch != null && !words.isEmpty()) {
            throw new UserError("--batch reads the positions from a file: leave POSITION out");
        }
        refuse(batch != null && on.given(), "--play-on");
        return batch != null;
    }

    /** The turns played before the position, in words; empty if there were none. */
    String before() {
        return on.words();
    }

    /** The one position. */
    Position read(Console console) {
        return PositionArgument.read(words, on, console);
    }

    /** The roll of an option, or else the one behind the position, which is taken off; null if there is none. */
    Roll roll(Roll option) {
        RollBehind behind = RollBehind.of(words, option);
        words = behind.words();
        return behind.roll();
    }

    /** Sees that a single position was given, and other arguments that it needs; else fails as if they were required. */
    void requireOne(List<ArgSpec> others) {
        List<ArgSpec> missing = new ArrayList<>(others);
        if (words.isEmpty()) {
            missing.add(command.positionalParameters().get(0));
        }
        if (!missing.isEmpty()) {
            throw new MissingParameterException(command.commandLine(), missing, "arguments are missing");
        }
    }

    /** Refuses an option that a batch has no use for. */
    static void refuse(boolean given, String option) {
        if (given) {
            throw new UserError(option + " is for single positions: leave it out with --batch");
        }
    }

    /**
     * Answers all lines.
     *
     * @param tell whether to say how fast it went
     */
    int answer(Batch lines, Console console, boolean tell) {
        long began = System.nanoTime();
        try (lines) {
            run(lines, console.in(), console.out());
        } catch (IOException e) {
            throw new UserError("cannot read '" + batch + "': it is missing, a folder, or not yours to read");
        }
        if (tell) {
            double took = (System.nanoTime() - began) / 1e9;
            console.err()
                    .println(String.format(
                            Locale.ROOT,
                            "%,d lines answered in %.3f s, %,.0f a second",
                            lines.read(),
                            took,
                            lines.read() / took));
        }
        if (lines.failed() > 0) {
            throw new UserError(lines.failed() + " of " + lines.read()
                    + " lines could not be answered: the answers with \"error\" say why");
        }
        return 0;
    }

    private void run(Batch lines, InputStream stdin, PrintWriter out) throws IOException {
        if (batch.equals(STDIN)) {
            lines.run(stdin, out);
            return;
        }
        // Unlike a channel's stream, this one can say of a pipe too how much is at hand.
        try (InputStream in = new FileInputStream(batch)) {
            lines.run(in, out);
        }
    }
}
