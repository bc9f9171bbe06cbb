package org.pipwright.bench.training;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.roll.Dice;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.run.RunFolder;
import org.pipwright.training.run.TrainingListener;
import org.pipwright.training.run.TrainingRun;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Games a second of training, with each learner, beside the plain way. Both begin with a trained net, since games of an
 * untrained one are several times as long.
 */
@Command(name = "training", description = "Training speed in games a second: with each learner, and the plain way.")
public final class TrainingCommand extends BenchCommand {
    private static final double WARM_UP_SHARE = 0.4;

    @Mixin
    private NetOption net;

    @Mixin
    private ThreadsOption threadsOption;

    @Option(
            names = "--seconds",
            paramLabel = "N",
            description = "Seconds for each learner (default: ${DEFAULT-VALUE}).")
    @Within(min = 5, max = 3600)
    private int seconds = 60;

    @Override
    protected void run() throws IOException {
        int threads = threadsOption.count();
        Model model = net.load();
        Path file = Files.createTempFile("start", ".safetensors");
        ModelFile.write(file, model);
        out().printf("%s, %d threads%n", model.shape(), threads);
        double sparse = ours(file, model, "sparse", seconds, threads);
        out().printf("sparse learner: %.0f games/s%n", sparse);
        out().printf("reference learner: %.0f games/s%n", ours(file, model, "reference", seconds, threads));
        double plain = plain(model, seconds);
        out().printf("plain way: %.2f games/s; the sparse learner is %.0f times as fast%n", plain, sparse / plain);
        Files.delete(file);
    }

    /** Games per second after the warm-up. */
    private static double ours(Path start, Model model, String learner, int seconds, int threads) throws IOException {
        Path folder = Files.createTempDirectory("training");
        TrainingSettings settings = TrainingSettings.defaults()
                .with(Setting.MINUTES, Double.toString(seconds / 60.0))
                .with(Setting.START_NET, start.toString())
                .with(Setting.CONTACT_FEATURES, model.contact().features().label())
                .with(Setting.CONTACT_HIDDEN, hidden(model.contact().shape()))
                .with(Setting.RACE_HIDDEN, hidden(model.race().shape()))
                .with(Setting.RATE_FIRST, "0.0001")
                .with(Setting.EVALUATION_GAMES, "2")
                .with(Setting.EVALUATION_SECONDS, Double.toString(Math.max(1, seconds * WARM_UP_SHARE)))
                .with(Setting.LEARNER, learner);
        List<Metrics> evaluated = new ArrayList<>();
        TrainingRun.run(
                RunFolder.create(folder.resolve("run"), settings),
                threads,
                listener(evaluated),
                ReportPage.NONE,
                () -> false);
        delete(folder);
        // The first interval warms up; of the others the second is whole.
        return evaluated.get(Math.min(1, evaluated.size() - 1)).gamesPerSecond();
    }

    private static TrainingListener listener(List<Metrics> evaluated) {
        return new TrainingListener() {
            @Override
            public void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest) {
                // Only whole intervals count.
            }

            @Override
            public void evaluated(Metrics metrics, double progress, double secondsLeft) {
                evaluated.add(metrics);
            }

            @Override
            public void warning(String message) {
                System.err.println(message);
            }
        };
    }

    private static double plain(Model model, int seconds) {
        try (PlainWay plain = new PlainWay(model.contact())) {
            int game = 0;
            long warm = System.nanoTime() + (long) (1e9 * seconds * WARM_UP_SHARE);
            while (System.nanoTime() < warm) {
                plain.play(Dice.ofGame(1, game++));
            }
            int before = game;
            long from = System.nanoTime();
            while (System.nanoTime() - from < 1e9 * seconds * WARM_UP_SHARE) {
                plain.play(Dice.ofGame(1, game++));
            }
            return (game - before) / ((System.nanoTime() - from) / 1e9);
        }
    }

    /** The middle of a shape: {@code 256,32} of {@code 270-256-32-6}. */
    private static String hidden(String shape) {
        return shape.substring(shape.indexOf('-') + 1, shape.lastIndexOf('-')).replace('-', ',');
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }
}
