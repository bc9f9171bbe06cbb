package org.pipwright.bench.search;

import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.search.ChanceCache;
import org.pipwright.engine.search.Choice;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints what lookahead costs, what its memory saves, what threads bring and what candidate pruning loses. */
@Command(
        name = "search",
        description =
                "What lookahead costs, what its memory saves, what threads gain and what candidate pruning loses.")
public final class SearchCommand extends BenchCommand {
    private static final int WARM_UP = 50;

    @Mixin
    private NetOption net;

    @Option(names = "--choices", paramLabel = "N", description = "Choices to search (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100_000)
    private int number = 200;

    @Override
    protected void run() {
        Model model = net.load();
        Supplier<Judgement> judgements = () -> Judgement.by(new NetworkEvaluator(model));
        List<Choice> choices = Choices.of(number, 4);
        warmUp(judgements);
        double raw = RawSpeed.of(judgements.get().evaluator(), choices, 20);
        out().printf(
                        Locale.ROOT,
                        "Net %s, %s, one thread. Handed positions, the evaluator values %,.0f a CPU second.%n%n",
                        net.name(),
                        model.shape(),
                        raw);
        out().println("| search | mean s a choice | most s | positions a CPU second | of raw | found in memory |");
        out().println("| --- | ---: | ---: | ---: | ---: | ---: |");
        for (int lookahead = 1; lookahead <= 2; lookahead++) {
            row(judgements, choices, lookahead, "", 17, raw);
        }
        List<Choice> few = choices.subList(0, Math.min(choices.size(), 5));
        row(judgements, few, 3, ", " + few.size() + " choices", 17, raw);
        row(judgements, few, 3, ", " + few.size() + " choices, no memory", 1, raw);
        out().println();
        threads(judgements, choices);
        out().println();
        out().print(new PruningTable(judgements).of(choices));
    }

    private static void warmUp(Supplier<Judgement> judgements) {
        List<Choice> choices = Choices.of(WARM_UP, 5);
        Effort.of(new Lookahead(judgements.get(), LookaheadSettings.DEFAULT), choices, 2);
        RawSpeed.of(judgements.get().evaluator(), choices, 20);
    }

    private void row(
            Supplier<Judgement> judgements,
            List<Choice> choices,
            int lookahead,
            String note,
            int cacheBits,
            double raw) {
        ChanceCache cache = new ChanceCache(cacheBits);
        Lookahead search = new Lookahead(judgements.get(), LookaheadSettings.DEFAULT, cache, () -> false);
        Effort effort = Effort.of(search, choices, lookahead);
        out().printf(
                        Locale.ROOT,
                        "| lookahead %d%s | %.4f | %.3f | %,.0f | %.2f | %.1f %% |%n",
                        lookahead,
                        note,
                        effort.seconds() / effort.choices(),
                        effort.most(),
                        effort.rate(),
                        effort.rate() / raw,
                        100 * cache.hitRate());
    }

    /** Time that passes, which other work on the machine spoils. */
    private void threads(Supplier<Judgement> judgements, List<Choice> choices) {
        double[] seconds = new double[3];
        for (int round = 0; round < 2; round++) {
            for (int threads = 1; threads <= 2; threads++) {
                try (ParallelLookahead search = new ParallelLookahead(judgements, LookaheadSettings.DEFAULT, threads)) {
                    long began = System.nanoTime();
                    choices.forEach(choice -> search.search(choice, 2));
                    double took = (System.nanoTime() - began) / 1e9;
                    seconds[threads] = round == 0 ? took : Math.min(seconds[threads], took);
                }
            }
        }
        out().printf(
                        Locale.ROOT,
                        "All choices at lookahead 2, the faster of two runs: %.2f s with one thread, %.2f s with two.%n",
                        seconds[1],
                        seconds[2]);
    }
}
