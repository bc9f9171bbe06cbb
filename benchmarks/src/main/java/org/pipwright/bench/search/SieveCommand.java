package org.pipwright.bench.search;

import java.util.List;
import java.util.Locale;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.bench.games.SelfPlayer;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Net;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.Judgement;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints what is lost if a quick net drops plays before a deep one, for several limits, in the pair's own games. */
@Command(
        name = "sieve",
        description = "What is lost, for several limits, if a quick net drops plays before a deep one judges the rest:"
                + " decisions of the pair's own games.")
public final class SieveCommand extends BenchCommand {
    @Mixin
    private NetOption net;

    @Option(
            names = "--quick",
            paramLabel = "NAME|FILE",
            description = "The quick net (default: the one in the deep net's file).")
    private String quick;

    @Option(names = "--half", description = "Round the quick net's numbers to half precision.")
    private boolean half;

    @Option(
            names = "--decisions",
            paramLabel = "N",
            description = "Decisions, rolls with at least two plays (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100_000_000)
    private int decisions = 20_000;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threads;

    @Override
    protected void run() {
        Model model = joined();
        List<Sieving> all = Sieving.all();
        try (SelfGames games =
                new SelfGames(() -> Judgement.by(new NetworkEvaluator(model)), 0, seed.value(), threads.count())) {
            games.play(new Both(model), found -> {
                for (int i = 0; i < all.size(); i++) {
                    all.get(i).add(found.get(i));
                }
                return all.get(0).decisions() < decisions;
            });
        }
        out().printf(
                        Locale.ROOT,
                        "Net %s, %s. %,d decisions of its own games, %.1f plays each.%n%n",
                        net.name(),
                        model.shape(),
                        all.get(0).decisions(),
                        all.get(0).plays());
        out().println(Sieving.heading());
        all.forEach(each -> out().println(each.row()));
    }

    private Model joined() {
        Model model = net.load();
        if (quick != null) {
            model = model.withQuick(ModelCatalog.shipped().load(quick).net());
        }
        Net first = model.quick()
                .orElseThrow(() -> new IllegalArgumentException(
                        "the net " + net.name() + " has no quick net in its file: name one with --quick"));
        return half ? model.withQuick(first.halved()) : model;
    }

    /** One game, each decision of which both nets judge. */
    private record Both(Model model) implements SelfGames.Game<List<Sieving>> {
        @Override
        public List<Sieving> play(SelfPlayer player, Dice dice, Dice choices) {
            PositionEvaluator deep = new NetworkEvaluator(model);
            List<Sieving> all = Sieving.all();
            player.play(
                    dice,
                    (planes, roll, legal, chosen) -> {
                        if (legal.size() > 1) {
                            float[] first = points(deep.quick(), planes, legal.results(), legal.size());
                            float[] judged = points(deep, planes, legal.results(), legal.size());
                            all.forEach(each -> each.add(first, judged));
                        }
                    },
                    new float[Outcomes.COUNT]);
            return all;
        }

        private static float[] points(PositionEvaluator evaluator, int[] planes, int[] results, int count) {
            float[] chances = new float[count * Outcomes.COUNT];
            evaluator.evaluateResults(planes, 0, results, count, chances);
            float[] points = new float[count];
            for (int i = 0; i < count; i++) {
                points[i] = Chances.equity(chances, i * Outcomes.COUNT);
            }
            return points;
        }
    }
}
