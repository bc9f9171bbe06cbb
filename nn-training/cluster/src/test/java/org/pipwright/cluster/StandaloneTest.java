package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.models.ModelCatalog;

/** A real master and real workers, one of which is killed in the middle of a rollout, another in the middle of a duel. */
class StandaloneTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");
    private static final Knowledge KNOWLEDGE = Knowledge.of(MODEL);
    private static final RolloutSettings ROLLOUT =
            RolloutSettings.DEFAULT.withTrials(720).withTruncation(12);
    private static final DuelSettings DUEL = DuelSettings.fullGames(1500, 3);

    @TempDir
    Path folder;

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

    @Test
    void killedWorkersChangeNothing() throws Exception {
        try (LoopbackCluster cluster = new LoopbackCluster(folder)) {
            cluster.addWorker();
            cluster.addWorker();
            List<String> notes = new ArrayList<>();
            try (Workforce workforce = new SparkWorkforces().open(cluster.url(), cluster.settings(), notes::add)) {
                assertEquals(
                        rollout(new Rollouts(KNOWLEDGE::judgement, ROLLOUT, 2), RolloutListener.NONE),
                        rollout(new Rollouts(workforce.share(KNOWLEDGE.portable()), ROLLOUT, workforce), report -> {
                            if (report.trials() == RolloutSettings.ROUND) {
                                cluster.kill(0);
                            }
                            return true;
                        }));
                cluster.addWorker();
                assertEquals(duel(() -> {}).run(2), duel(() -> cluster.kill(1)).run(workforce));
            }
        }
    }
}
