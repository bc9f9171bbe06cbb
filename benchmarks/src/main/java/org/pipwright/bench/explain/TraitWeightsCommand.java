package org.pipwright.bench.explain;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.engine.explain.Stage;
import org.pipwright.engine.explain.Trait;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.search.Judgement;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Fits how much each trait counts and prints the file that explanations read. */
@Command(
        name = "trait-weights",
        description =
                "Fits what each fact of an explanation is worth on average in a net's own games, and prints the file"
                        + " that explanations read.")
public final class TraitWeightsCommand extends BenchCommand {
    @Mixin
    private NetOption net;

    @Option(names = "--pairs", paramLabel = "N", description = "Pairs of plays (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100_000_000)
    private int pairs = 100_000;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threads;

    @Override
    protected void run() {
        Model model = net.load();
        Map<Stage, SignedFit> fits = new EnumMap<>(Stage.class);
        for (Stage stage : Stage.values()) {
            fits.put(stage, new SignedFit(Trait.values().length));
        }
        try (SelfGames games =
                new SelfGames(() -> Judgement.by(new NetworkEvaluator(model)), 0, seed.value(), threads.count())) {
            games.<List<TraitPairs.Pair>>play(new TraitPairs(model), found -> {
                found.forEach(pair -> fits.get(pair.stage()).add(pair.traits(), pair.equity()));
                return fits.values().stream().mapToLong(SignedFit::rows).sum() < pairs;
            });
        }
        out().printf(
                        Locale.ROOT,
                        "# Points per game for one more of each trait; net %s, seed %d.%n",
                        net.name(),
                        seed.value());
        fits.forEach(this::print);
    }

    private void print(Stage stage, SignedFit fit) {
        double[] weights = fit.weights();
        out().printf(
                        Locale.ROOT,
                        "# %s: %,d pairs of plays, %.0f %% of the mean square of their differences explained%n",
                        stage,
                        fit.rows(),
                        100 * fit.explained(weights));
        for (Trait trait : Trait.values()) {
            double weight = weights[trait.ordinal()];
            if (weight > 0) {
                out().printf(Locale.ROOT, "%s,%s,%.6f%n", stage, trait, trait.sign() * weight);
            }
        }
    }
}
