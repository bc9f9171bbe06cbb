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
import org.pipwright.bench.BenchCommand;
import org.pipwright.engine.files.AtomicFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * Runs all speed measurements in one go, so that their ratios hold though the machine may be busy, and prints a table with
 * everything the numbers depend on.
 */
@Command(name = "speed", description = "All speed measurements in one go: ten minutes on an otherwise idle machine.")
public final class SpeedCommand extends BenchCommand {
    private static final int FORKS = 2;
    private static final int WARMUPS = 6;
    private static final int MEASUREMENTS = 4;
    private static final TimeValue EACH = TimeValue.seconds(1);

    @Option(
            names = "--only",
            paramLabel = "PATTERN",
            description = "Benchmarks whose class or method matches (default: all).")
    private String only = "";

    @Option(names = "--out", paramLabel = "FILE", description = "Also write the table to this file.")
    private Path file;

    @Override
    protected void run() throws IOException {
        Machine before = Machine.now();
        String table = SpeedTable.of(before, measured(), Machine.now());
        out().println(table);
        if (file != null) {
            AtomicFile.write(file, stream -> stream.write(table.getBytes(StandardCharsets.UTF_8)));
        }
    }

    private Collection<RunResult> measured() {
        ChainedOptionsBuilder options = new OptionsBuilder()
                .include("org\\.pipwright\\.bench\\.speed\\..*" + only)
                .forks(FORKS)
                .warmupIterations(WARMUPS)
                .warmupTime(EACH)
                .measurementIterations(MEASUREMENTS)
                .measurementTime(EACH)
                .addProfiler(CpuShare.class)
                .shouldFailOnError(true)
                // Not those of this JVM: which kernel runs is each benchmark's own choice.
                .jvmArgs("-Xmx2g");
        try {
            return new Runner(options.build()).run();
        } catch (RunnerException e) {
            throw new IllegalStateException(e);
        }
    }
}
