package org.pipwright.cli;

import java.util.function.ToIntFunction;
import org.pipwright.cli.command.OutputGuard;
import org.pipwright.cli.console.UserError;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IExecutionStrategy;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;

/** Runs the command that was parsed, and hands on whatever goes wrong before, then and there. */
final class CommandErrors implements IParameterExceptionHandler, IExecutionStrategy, IExecutionExceptionHandler {
    private final ToIntFunction<String> misread;
    private final ToIntFunction<Throwable> report;

    /**
     * Hands on errors.
     *
     * @param misread prints the line that says what is wrong with a command line, and returns the exit code
     * @param report says what went wrong otherwise, and returns the exit code
     */
    CommandErrors(ToIntFunction<String> misread, ToIntFunction<Throwable> report) {
        this.misread = misread;
        this.report = report;
    }

    @Override
    public int handleParseException(ParameterException error, String[] args) {
        return misread.applyAsInt(UsageErrors.line(error));
    }

    @Override
    public int execute(ParseResult parsed) {
        try {
            OutputGuard.check(parsed);
        } catch (UserError e) {
            return report.applyAsInt(e);
        }
        return new RunLast().execute(parsed);
    }

    @Override
    public int handleExecutionException(Exception error, CommandLine command, ParseResult parsed) {
        return report.applyAsInt(error);
    }
}
