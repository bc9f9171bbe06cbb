package org.pipwright.bench.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.lang.reflect.AnnotatedElement;
import org.pipwright.bench.NetPlayCommand;
import org.pipwright.bench.Within;
import org.pipwright.bench.calibration.CalibrationCommand;
import org.pipwright.bench.cluster.ClusterCommand;
import org.pipwright.bench.cube.ContactFitCommand;
import org.pipwright.bench.cube.CubeFitCommand;
import org.pipwright.bench.cube.MatchCubeCommand;
import org.pipwright.bench.cube.MatchTableCommand;
import org.pipwright.bench.cube.ReducedCubeCommand;
import org.pipwright.bench.exact.PolicyCommand;
import org.pipwright.bench.exact.RacesCommand;
import org.pipwright.bench.exact.RolloutErrorsCommand;
import org.pipwright.bench.exact.SolveCommand;
import org.pipwright.bench.explain.TraitWeightsCommand;
import org.pipwright.bench.kills.KillsCommand;
import org.pipwright.bench.search.DuelsCommand;
import org.pipwright.bench.search.SearchCommand;
import org.pipwright.bench.search.SieveCommand;
import org.pipwright.bench.signature.SignatureCommand;
import org.pipwright.bench.speed.SpeedCommand;
import org.pipwright.bench.start.StartCommand;
import org.pipwright.bench.strength.CubeReferenceCommand;
import org.pipwright.bench.strength.CubeScoreCommand;
import org.pipwright.bench.strength.CurveCommand;
import org.pipwright.bench.strength.DifferencesCommand;
import org.pipwright.bench.strength.FrontierCommand;
import org.pipwright.bench.strength.OpeningsCommand;
import org.pipwright.bench.strength.ReferenceCommand;
import org.pipwright.bench.strength.SampleCommand;
import org.pipwright.bench.strength.ScoreCommand;
import org.pipwright.bench.training.TrainingCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;

/** Runs one measurement. Exit codes: 0, 2 after input that cannot be, 1 after any other failure. */
@Command(
        name = "benchmarks/run",
        description = "Measures speed and strength.",
        synopsisSubcommandLabel = "COMMAND",
        subcommands = {
            SpeedCommand.class,
            TrainingCommand.class,
            SearchCommand.class,
            SieveCommand.class,
            TraitWeightsCommand.class,
            DuelsCommand.class,
            SignatureCommand.class,
            OpeningsCommand.class,
            StartCommand.class,
            ClusterCommand.class,
            CalibrationCommand.class,
            SolveCommand.class,
            PolicyCommand.class,
            RacesCommand.class,
            RolloutErrorsCommand.class,
            SampleCommand.class,
            ReferenceCommand.class,
            DifferencesCommand.class,
            ScoreCommand.class,
            CubeReferenceCommand.class,
            CubeScoreCommand.class,
            CurveCommand.class,
            FrontierCommand.class,
            MatchTableCommand.class,
            CubeFitCommand.class,
            ContactFitCommand.class,
            MatchCubeCommand.class,
            ReducedCubeCommand.class,
            NetPlayCommand.class,
            KillsCommand.class
        })
public final class Main {
    private static final int USER_ERROR = 2;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    /** Runs the command that the words name and ends the JVM. */
    public static void main(String[] args) {
        System.exit(run(new PrintWriter(System.out, true), new PrintWriter(System.err, true), args));
    }

    /** Runs a command and returns its exit code. */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        CommandLine root = new CommandLine(new Main());
        root.setOut(out);
        root.setErr(err);
        root.setExpandAtFiles(false);
        root.setUsageHelpWidth(100);
        root.setParameterExceptionHandler((e, words) -> {
            String name = e.getCommandLine().getCommandSpec().qualifiedName();
            err.println(line(e) + "; see " + name.strip() + " --help");
            return USER_ERROR;
        });
        root.setExecutionExceptionHandler((e, at, parsed) -> {
            if (e instanceof IllegalArgumentException || e instanceof IOException) {
                err.println(e.getMessage());
                return USER_ERROR;
            }
            throw e;
        });
        root.setExecutionStrategy(parsed -> {
            holdToRanges(parsed);
            return new RunLast().execute(parsed);
        });
        return root.execute(args);
    }

    private static String line(ParameterException e) {
        return String.valueOf(e.getMessage()).replaceAll("\\s+", " ");
    }

    private static void holdToRanges(ParseResult parsed) {
        for (ParseResult at = parsed; at != null; at = at.subcommand()) {
            for (OptionSpec option : at.matchedOptions()) {
                Within range = ((AnnotatedElement) option.userObject()).getAnnotation(Within.class);
                if (range != null) {
                    int value = option.getValue();
                    if (value < range.min() || value > range.max()) {
                        throw new ParameterException(
                                at.commandSpec().commandLine(),
                                option.longestName() + " takes a whole number from " + range.min() + " to "
                                        + range.max() + ", not '" + value + "'");
                    }
                }
            }
        }
    }
}
