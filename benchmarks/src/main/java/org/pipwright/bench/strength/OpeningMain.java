package org.pipwright.bench.strength;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import org.pipwright.bench.Judgements;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;
import org.pipwright.models.ModelCatalog;

/** Prints a net's first plays beside those that printed sources name, and says which differ. */
public final class OpeningMain {
    private OpeningMain() {}

    public static void main(String[] args) {
        Main.run(args, OpeningMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options =
                new Options(args, Set.of("--net", "--lookahead", "--trials", "--seed", "--threads"), Set.of());
        Model model = ModelCatalog.shipped().load(options.text("--net").orElseGet(() -> ModelCatalog.shipped()
                .defaultName()));
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        int lookahead = options.number("--lookahead", 0, 0, LookaheadSettings.MOST);
        int trials = options.number("--trials", 0, 0, 10_000_000);
        Supplier<Judgement> judgements = Judgements.net(model);
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, threads)) {
            if (trials == 0) {
                print(OpeningTable.searched(search, lookahead));
                return;
            }
            RolloutSettings settings = RolloutSettings.DEFAULT
                    .withTrials(trials)
                    .withLookahead(lookahead)
                    .withSeed(options.number("--seed", 1, 0, Integer.MAX_VALUE));
            try (Rollouts rollouts = new Rollouts(judgements, settings, threads)) {
                print(OpeningTable.rolledOut(search, rollouts));
            }
        }
    }

    private static void print(List<OpeningLine> lines) {
        for (OpeningLine line : lines) {
            System.out.printf(
                    Locale.ROOT,
                    "%s  %-8s %-20s %+.4f%s  named: %s%s%n",
                    line.opening().roll(),
                    line.verdict(),
                    line.chosen(),
                    line.equity(),
                    plusMinus(line.error()),
                    line.named(),
                    line.opening().isBest(line.chosen())
                            ? ""
                            : String.format(Locale.ROOT, " at %+.4f%s", line.cost(), plusMinus(line.costError())));
        }
        System.out.println(OpeningLine.agreeing(lines) + " of " + lines.size() + " named best or close");
    }

    private static String plusMinus(OptionalDouble error) {
        return error.isPresent() ? String.format(Locale.ROOT, " ± %.4f", error.getAsDouble()) : "";
    }
}
