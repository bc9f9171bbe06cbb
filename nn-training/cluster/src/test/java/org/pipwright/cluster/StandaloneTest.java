package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.models.ModelCatalog;

/** A real master and real workers, on one machine. */
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

    /** One is killed in the middle of a rollout, another in the middle of a duel. */
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

    @Test
    void theSecretOpens() {
        try (Workforce workforce = open(cluster.settings())) {
            assertTrue(workforce.size() >= 1);
        }
    }
}
