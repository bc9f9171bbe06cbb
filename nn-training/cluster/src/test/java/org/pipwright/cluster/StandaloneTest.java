package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.models.ModelCatalog;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.run.RunFolder;
import org.pipwright.training.run.TrainingListener;
import org.pipwright.training.run.TrainingRun;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** A real master and real workers, on one machine. */
@EnabledIfSystemProperty(
        named = "pipwright.test.complete",
        matches = "true",
        disabledReason = "starts a whole cluster of processes: -Dpipwright.test.complete=true")
class StandaloneTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");
    private static final Knowledge KNOWLEDGE = Knowledge.of(MODEL);
    private static final RolloutSettings ROLLOUT =
            RolloutSettings.DEFAULT.withTrials(720).withTruncation(12);
    private static final DuelSettings DUEL = DuelSettings.fullGames(1500, 3);

    @TempDir
    static Path folder;

    private static LoopbackCluster cluster;

    @BeforeAll
    static void start() throws Exception {
        cluster = new LoopbackCluster(folder);
    }

    @AfterEach
    void endWorkers() {
        for (int i = 0; i < cluster.workers(); i++) {
            cluster.kill(i);
        }
    }

    @AfterAll
    static void stop() {
        cluster.close();
    }

    private static RolloutReport rollout(Rollouts open, RolloutListener listener) {
        try (Rollouts rollouts = open) {
            return rollouts.odds(Position.start(), WorkFile.NONE, listener);
        }
    }

    private static Duel duel(Runnable first) {
        Entrant net = Entrant.ofModel("fifth", MODEL, 0);
        List<Tally> told = new ArrayList<>();
        return new Duel(net, Baselines.named("builder").orElseThrow(), DUEL, tally -> {
            if (told.isEmpty()) {
                first.run();
            }
            told.add(tally);
        });
    }

    /** Kills a worker when the first games of a training's second round have come. */
    private static final class Killing implements Workforce {
        private final Workforce workers;
        private final int victim;
        private int rounds;
        private boolean killed;

        Killing(Workforce workers, int victim) {
            this.workers = workers;
            this.victim = victim;
        }

        @Override
        public int size() {
            return workers.size();
        }

        @Override
        public <V extends Serializable> Shared<V> share(V value) {
            return workers.share(value);
        }

        @Override
        public <T extends Serializable, R extends Serializable> void inOrder(
                Trade<T, R> trade, Iterator<T> tasks, Predicate<R> taken, BooleanSupplier stopped) {
            rounds++;
            workers.inOrder(
                    trade,
                    tasks,
                    result -> {
                        if (rounds == 2 && !killed) {
                            cluster.kill(victim);
                            killed = true;
                        }
                        return taken.test(result);
                    },
                    stopped);
        }

        @Override
        public void close() {
            workers.close();
        }
    }

    /** The net of four rounds whose targets come from lookahead. */
    private static byte[] trained(String name, Workforce workforce) {
        TrainingSettings settings = TrainingSettings.defaults()
                .with(Setting.GAMES, "256")
                .with(Setting.ROUND, "64")
                .with(Setting.TARGETS, "lookahead")
                .with(Setting.SAMPLE_SHARE, "0.1")
                .with(Setting.CONTACT_HIDDEN, "16,8")
                .with(Setting.RACE_HIDDEN, "8")
                .with(Setting.EVALUATION_GAMES, "2");
        RunFolder run = RunFolder.create(folder.resolve(name), settings);
        TrainingRun.run(run, 2, workforce, new Silent(), ReportPage.NONE, () -> false);
        return Nets.weights(run.modelFile());
    }

    private static final class Silent implements TrainingListener {
        @Override
        public void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest) {}

        @Override
        public void evaluated(Metrics metrics, double progress, double secondsLeft) {}

        @Override
        public void warning(String message) {}
    }

    /** One is killed in the middle of a rollout, one in the middle of a duel, one in the middle of a training round. */
    @Test
    void killedWorkersChangeNothing() throws Exception {
        int first = cluster.workers();
        cluster.addWorker();
        cluster.addWorker();
        try (Workforce workforce = open(cluster.settings())) {
            assertEquals(
                    rollout(new Rollouts(KNOWLEDGE::judgement, ROLLOUT, 2), RolloutListener.NONE),
                    rollout(new Rollouts(workforce.share(KNOWLEDGE.portable()), ROLLOUT, workforce), report -> {
                        if (report.trials() == RolloutSettings.ROUND) {
                            cluster.kill(first);
                        }
                        return true;
                    }));
            cluster.addWorker();
            assertEquals(
                    duel(() -> {}).run(2), duel(() -> cluster.kill(first + 1)).run(workforce));
            cluster.addWorker();
            Killing killing = new Killing(workforce, first + 2);
            assertArrayEquals(trained("here", null), trained("there", killing));
            assertTrue(killing.killed);
        }
    }

    private static Workforce open(Map<String, String> settings) {
        return new SparkWorkforces().open(cluster.url(), settings, note -> {});
    }

    @Test
    void anotherSecretIsSaidAtOnce() {
        Map<String, String> other = new HashMap<>(cluster.settings());
        other.put("spark.authenticate.secret", "another");
        String said = "something listens at '" + cluster.url() + "', but does not answer as a master of Spark ";
        for (Map<String, String> settings : List.of(other, Map.<String, String>of())) {
            WorkforceException refused = assertThrows(WorkforceException.class, () -> open(settings));
            assertTrue(refused.getMessage().startsWith(said), refused.getMessage());
            assertEquals(1, refused.getMessage().lines().count());
        }
    }

    private static String refusal(Map<String, String> settings) {
        try (Workforce workforce = open(settings)) {
            WorkforceException refused =
                    assertThrows(WorkforceException.class, () -> duel(() -> {}).run(workforce));
            assertEquals(1, refused.getMessage().lines().count());
            return refused.getMessage();
        }
    }

    private static void requireMatch(String pattern, String message) {
        assertTrue(message.matches(pattern), message);
    }

    /** A class of engine from elsewhere, as where another version lies on a worker's class path. */
    private static Path otherBuild() throws IOException {
        String name = Position.class.getName().replace('.', '/') + ".class";
        Path other = folder.resolve("other");
        Files.createDirectories(other.resolve(name).getParent());
        try (InputStream in = Position.class.getClassLoader().getResourceAsStream(name)) {
            Files.copy(in, other.resolve(name));
        }
        return other;
    }

    @Test
    void anotherBuildIsRefused() throws Exception {
        cluster.addWorker();
        Map<String, String> other = new HashMap<>(cluster.settings());
        other.merge(
                "spark.executor.extraClassPath", otherBuild() + File.pathSeparator, (path, before) -> before + path);
        requireMatch(
                "the worker on 127\\.0\\.0\\.1 has another build of Pipwright \\(\\w+, this is " + Build.id()
                        + "\\): start it with the same jars",
                refusal(other));
    }

    /** One of them has no vectors. */
    @Test
    void otherVectorsAreNotMixedIn() throws Exception {
        assertTrue(Build.arithmetic().startsWith("vectors of "), Build.arithmetic());
        cluster.addWorker();
        cluster.addWorker("-Dpipwright.kernel=plain");
        Map<String, String> both = new HashMap<>(cluster.settings());
        both.put("spark.cores.max", "2");
        both.put("spark.scheduler.minRegisteredResourcesRatio", "1.0");
        String kind = "(plain|" + Build.arithmetic() + ")";
        requireMatch(
                "the worker on 127\\.0\\.0\\.1 computes with " + kind + ", the one on 127\\.0\\.0\\.1 with " + kind
                        + ": their results differ in last digits, so let workers with the same kind of processor work"
                        + " together",
                refusal(both));
    }

    @Test
    void aWorkerThatCannotWriteEndsTheWork() throws Exception {
        cluster.addWorker();
        cluster.spoil(cluster.workers() - 1);
        assertEquals(
                "the master at " + cluster.url() + " has ended this application: the workers' logs say why its"
                        + " processes could not start",
                refusal(cluster.settings()));
    }
}
