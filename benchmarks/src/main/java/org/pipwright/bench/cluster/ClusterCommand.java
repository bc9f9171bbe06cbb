package org.pipwright.bench.cluster;

import java.util.Arrays;
import java.util.Locale;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.ClusterOption;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Times the same work by threads of this machine and on a cluster, in turns, and sees that results are equal. */
@Command(
        name = "cluster",
        description = "Times a duel, a rollout and rounds of training on a cluster and on this machine's threads.")
public final class ClusterCommand extends BenchCommand {
    /** Share of the work that is done first, untimed: the JVM compiles what is run often. */
    private static final int WARM_UP = 8;

    @Mixin
    private NetOption net;

    @Option(names = "--games", paramLabel = "N", description = "Games of the duel (default: ${DEFAULT-VALUE}).")
    @Within(min = 256, max = 100_000_000)
    private int games = 200_000;

    @Option(names = "--trials", paramLabel = "N", description = "Games of the rollout (default: ${DEFAULT-VALUE}).")
    @Within(min = 288, max = 10_000_000)
    private int trials = 51_840;

    @Option(
            names = "--rounds",
            paramLabel = "N",
            description = "Rounds of training after a first one; 0 for none (default: ${DEFAULT-VALUE}).")
    @Within(min = 0, max = 1_000)
    private int rounds = 3;

    @Option(names = "--round", paramLabel = "N", description = "Games of a round (default: ${DEFAULT-VALUE}).")
    @Within(min = 16, max = 1_000_000)
    private int roundGames = 512;

    @Option(names = "--times", paramLabel = "N", description = "Times to measure each (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100)
    private int times = 2;

    @Mixin
    private ThreadsOption threads;

    @Mixin
    private ClusterOption cluster;

    @Override
    protected void run() {
        long began = System.nanoTime();
        try (Workforce workforce = cluster.openIfGiven()) {
            if (workforce == null) {
                throw new IllegalArgumentException("give the cluster with --cluster, for instance local[2]");
            }
            out().printf(Locale.ROOT, "start of Spark: %.1f s%n", seconds(began));
            Model model = net.load();
            String beside = threads.count() + " threads, and on the cluster";
            compare(
                    games + " games of " + net.name() + " against builder",
                    beside,
                    size -> duel(model, games / size).run(threads.count()),
                    size -> duel(model, games / size).run(workforce));
            Knowledge knowledge = Knowledge.of(model);
            compare(
                    trials + " trials from the start",
                    beside,
                    size -> odds(new Rollouts(knowledge::judgement, settings(size), threads.count())),
                    size -> odds(new Rollouts(workforce.share(knowledge.portable()), settings(size), workforce)));
            if (rounds > 0) {
                train(new TrainingRounds(model, roundGames, threads.count()), workforce);
            }
        } catch (WorkforceException e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    private void train(TrainingRounds training, Workforce workforce) {
        Metered metered = new Metered(workforce);
        TrainingRounds.Measured here = training.run(rounds, null);
        TrainingRounds.Measured there = training.run(rounds, metered);
        if (!Arrays.equals(here.net(), there.net())) {
            throw new IllegalArgumentException("the cluster's net differs");
        }
        out().printf(
                        Locale.ROOT,
                        "%d training rounds of %d games, targets by lookahead: %.2f s each by %d threads, and on the cluster"
                                + " %.2f s, %+.1f %%; equal nets%n",
                        rounds,
                        roundGames,
                        here.seconds(),
                        threads.count(),
                        there.seconds(),
                        100 * (there.seconds() / here.seconds() - 1));
        out().printf(
                        Locale.ROOT,
                        "of such a round: %.2f MB to each machine, %.2f MB back, %.2f s here while nobody plays%n",
                        metered.sharedBytes / 1e6,
                        metered.resultBytes / 1e6,
                        there.seconds() - metered.secondsOfLast(rounds));
        out().flush();
    }

    /** Some work, or so small a part of it. */
    @FunctionalInterface
    private interface Work {
        Object done(int part);
    }

    private void compare(String what, String beside, Work here, Work there) {
        here.done(WARM_UP);
        timed(() -> there.done(WARM_UP), "first " + what.split(" ")[1] + " on the cluster, an eighth");
        double[] seconds = new double[2];
        for (int i = 0; i < times; i++) {
            Object[] results = new Object[2];
            seconds[0] += seconds(() -> results[0] = here.done(1));
            seconds[1] += seconds(() -> results[1] = there.done(1));
            if (!results[0].equals(results[1])) {
                throw new IllegalArgumentException("the cluster's result differs: " + results[0] + ", " + results[1]);
            }
        }
        out().printf(
                        Locale.ROOT,
                        "%s, %d times: %.1f s each by %s %.1f s, %+.1f %%; equal results%n",
                        what,
                        times,
                        seconds[0] / times,
                        beside,
                        seconds[1] / times,
                        100 * (seconds[1] / seconds[0] - 1));
        out().flush();
    }

    private void timed(Runnable work, String what) {
        out().printf(Locale.ROOT, "%s: %.1f s%n", what, seconds(work));
    }

    private static double seconds(Runnable work) {
        long began = System.nanoTime();
        work.run();
        return seconds(began);
    }

    private static double seconds(long began) {
        return (System.nanoTime() - began) / 1e9;
    }

    private static Duel duel(Model model, int games) {
        Entrant net = Entrant.ofModel("net", model, 0);
        return new Duel(
                net, Baselines.named("builder").orElseThrow(), DuelSettings.fullGames(games / 2, 1), soFar -> {});
    }

    private RolloutSettings settings(int part) {
        return RolloutSettings.DEFAULT.withTrials(trials / part);
    }

    private static Object odds(Rollouts open) {
        try (Rollouts rollouts = open) {
            return rollouts.odds(Position.start(), WorkFile.NONE, RolloutListener.NONE);
        }
    }
}
