package org.pipwright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.OutputFailure;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.engine.text.Printable;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** Runs one command line: arguments to output, errors and an exit code, without touching the process. */
final class Cli {
    /** Exit code of a bug. */
    static final int BUG = 1;

    /** Exit code of a mistake that the user can mend. */
    static final int USER_ERROR = 2;

    /** Columns of the help where there is room. */
    private static final int USUAL_WIDTH = 90;

    /** The fewest columns that picocli can lay out a help in. */
    private static final int MIN_WIDTH = 55;

    private static final String TRACE = "--trace";

    private final Console console;
    private final Map<String, Class<?>> commands;

    Cli(Console console, Map<String, Class<?>> commands) {
        this.console = console;
        this.commands = commands;
    }

    /** Runs a command and returns the exit code: 0, {@link #BUG} or {@link #USER_ERROR}. */
    int run(String... args) {
        try {
            return execute(args);
        } finally {
            Interruption.said();
        }
    }

    private int execute(String... args) {
        try {
            // picocli prints a help that --help asks for by itself, and would print a stack trace if that fails.
            StringWriter help = new StringWriter();
            int code = commandLine(new PrintWriter(help), args).execute(args);
            console.out().print(help);
            console.out().flush();
            return code;
        } catch (Throwable e) {
            return report(e, args);
        }
    }

    /** The commands that the arguments name, all of them without arguments; the help goes to the writer. */
    CommandLine commandLine(PrintWriter help, String... args) {
        ConsoleFactory factory = new ConsoleFactory(console);
        CommandLine root = new CommandLine(new Pipwright(console), factory);
        Commands.addTo(root, commands, factory, args);
        root.setOut(help);
        root.setErr(console.err());
        root.setExpandAtFiles(false);
        root.setColorScheme(CommandLine.Help.defaultColorScheme(console.screen().colour() ? Ansi.ON : Ansi.OFF));
        int columns = console.screen().columns();
        if (columns > 0 && columns < USUAL_WIDTH) {
            root.setUsageHelpWidth(Math.max(MIN_WIDTH, columns));
        }
        NumberConverters.registerIn(root);
        CommandErrors errors = new CommandErrors(
                line -> {
                    print(line);
                    return USER_ERROR;
                },
                e -> report(e, args));
        root.setParameterExceptionHandler(errors);
        root.setExecutionStrategy(errors);
        root.setExecutionExceptionHandler(errors);
        return root;
    }

    private int report(Throwable e, String... args) {
        if (e instanceof OutputFailure && ((OutputFailure) e).readerHasGone()) {
            return 0;
        }
        boolean users = ErrorLines.isUsers(e);
        print(ErrorLines.of(e));
        if (!users && List.of(args).contains(TRACE)) {
            e.printStackTrace(console.err());
        }
        return users ? USER_ERROR : BUG;
    }

    private void print(String line) {
        try {
            console.out().flush();
        } catch (OutputFailure e) {
            // The line below matters more than output that nobody takes.
        }
        console.err().println("pipwright: " + Printable.of(line));
    }
}
