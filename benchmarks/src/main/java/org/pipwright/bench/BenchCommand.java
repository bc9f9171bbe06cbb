package org.pipwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** One measurement, a command of {@code cli.Main}. */
public abstract class BenchCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    @Override
    public final Integer call() throws IOException {
        run();
        out().flush();
        return 0;
    }

    /** Measures; an {@link IllegalArgumentException} says in one line what is wrong with the input. */
    protected abstract void run() throws IOException;

    /** Where results go. */
    protected final PrintWriter out() {
        return spec.commandLine().getOut();
    }

    /** Whether the command line has an option. */
    protected final boolean given(String option) {
        return spec.commandLine().getParseResult().hasMatchedOption(option);
    }
}
