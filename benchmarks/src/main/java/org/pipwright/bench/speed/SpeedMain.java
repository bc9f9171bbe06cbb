package org.pipwright.bench.speed;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collection;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.pipwright.engine.files.AtomicFile;

/**
 * Runs all speed measurements in one go, so that their ratios hold though the machine may be busy, and prints a table with
 * everything the numbers depend on. {@code --out FILE} writes the table to a file too; {@code --only PATTERN} runs the
 * benchmarks whose class or method matches.
 */
public final class SpeedMain {
    private static final int FORKS = 2;
    private static final int WARMUPS = 6;
    private static final int MEASUREMENTS = 4;
    private static final TimeValue EACH = TimeValue.seconds(1);

    private SpeedMain() {}

    public static void main(String[] args) throws RunnerException, IOException {
        String only = "";
        Path out = null;
        for (int i = 0; i < args.length; i += 2) {
            if (i + 1 < args.length && args[i].equals("--only")) {
                only = args[i + 1];
            } else if (i + 1 < args.length && args[i].equals("--out")) {
                out = Path.of(args[i + 1]);
            } else {
                System.err.println("'" + args[i] + "' is not understood: use --only PATTERN and --out FILE");
                System.exit(2);
            }
        }
        Machine before = Machine.now();
        String table = SpeedTable.of(before, run(only), Machine.now());
        System.out.println(table);
        if (out != null) {
            AtomicFile.write(out, stream -> stream.write(table.getBytes(StandardCharsets.UTF_8)));
        }
    }

    private static Collection<RunResult> run(String only) throws RunnerException {
        ChainedOptionsBuilder options = new OptionsBuilder()
                .include("org\\.pipwright\\.bench\\.speed\\..*" + only)
                .forks(FORKS)
                .warmupIterations(WARMUPS)
                .warmupTime(EACH)
                .measurementIterations(MEASUREMENTS)
                .measurementTime(EACH)
                .addProfiler(CpuShare.class)
                .shouldFailOnError(true)
                .jvmArgsPrepend("-Xmx2g");
        return new Runner(options.build()).run();
    }
}
