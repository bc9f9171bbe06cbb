package org.pipwright.bench.cluster;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.run.RunFolder;
import org.pipwright.training.run.TrainingListener;
import org.pipwright.training.run.TrainingRun;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Training that goes on from a net for some rounds, with targets by lookahead. */
final class TrainingRounds {
    private final Model start;
    private final int games;
    private final int threads;

    /**
     * Rounds.
     *
     * @param start a net for contact and one for races
     * @param games a round
     * @param threads that learn, and play where nobody else does
     */
    TrainingRounds(Model start, int games, int threads) {
        this.start = start;
        this.games = games;
        this.threads = threads;
    }

    /**
     * What was measured.
     *
     * @param seconds each round took, but for a first one
     * @param net what came of all rounds
     */
    record Measured(double seconds, byte[] net) {}

    /** One round that is not timed, and then so many; {@code workforce} plays, or this machine if it is null. */
    Measured run(int rounds, Workforce workforce) {
        try {
            Path folder = Files.createTempDirectory("pipwright-rounds");
            try {
                return run(folder, rounds, workforce);
            } finally {
                delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot train in the folder for temporary files", e);
        }
    }

    private Measured run(Path folder, int rounds, Workforce workforce) throws IOException {
        Path file = folder.resolve("start.safetensors");
        ModelFile.write(file, start);
        TrainingSettings settings = TrainingSettings.defaults()
                .with(Setting.GAMES, Integer.toString((1 + rounds) * games))
                .with(Setting.ROUND, Integer.toString(games))
                .with(Setting.TARGETS, "lookahead")
                .with(Setting.START_NET, file.toString())
                .with(Setting.CONTACT_FEATURES, start.contact().features().label())
                .with(Setting.CONTACT_HIDDEN, hidden(start.contact().shape()))
                .with(Setting.RACE_HIDDEN, hidden(start.race().shape()))
                .with(Setting.RATE_FIRST, "0.0001")
                .with(Setting.EVALUATION_GAMES, "2")
                .with(Setting.EVALUATION_SECONDS, "1000000");
        RunFolder run = RunFolder.create(folder.resolve("run"), settings);
        List<Long> ends = new ArrayList<>();
        TrainingRun.run(run, threads, workforce, new Clock(ends), ReportPage.NONE, () -> false);
        Model net = ModelFile.read(run.modelFile());
        double seconds = (ends.get(rounds) - ends.get(0)) / 1e9 / rounds;
        return new Measured(seconds, ModelFile.toBytes(net.withNotes(Map.of())));
    }

    /** Of a shape such as 270-256-32-6 what lies between input and output. */
    private static String hidden(String shape) {
        return shape.substring(shape.indexOf('-') + 1, shape.lastIndexOf('-')).replace('-', ',');
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /** Notes when rounds end. */
    private record Clock(List<Long> ends) implements TrainingListener {
        @Override
        public void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest) {
            ends.add(System.nanoTime());
        }

        @Override
        public void evaluated(Metrics metrics, double progress, double secondsLeft) {
            // At the end, after the last round.
        }

        @Override
        public void warning(String message) {
            System.err.println(message);
        }
    }
}
