package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.pipwright.bench.Judgements;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadPlayer;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;
import org.pipwright.models.ModelCatalog;

/** Prints what a net with some lookahead, or a fixed baseline, loses on the decisions of a reference. */
public final class ScoreMain {
    /** Positions whose play is chosen before the clock counts, so that the code is compiled. */
    private static final int WARM_UP = 200;

    private ScoreMain() {}

    public static void main(String[] args) {
        Main.run(args, ScoreMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options = new Options(
                args,
                Set.of("--reference", "--net", "--lookahead", "--seconds", "--threads"),
                Set.of("--json", "--tables"));
        Path file = Path.of(options.required("--reference"));
        String name =
                options.text("--net").orElseGet(() -> ModelCatalog.shipped().defaultName());
        List<Reference> references =
                JsonLines.read(file, ReferenceHeader.class, Reference.class).records();
        Optional<Entrant> baseline = Baselines.named(name);
        if (baseline.isPresent()) {
            print(
                    name,
                    references,
                    () -> Chooser.byPlayer(baseline.get().players().get()),
                    options);
            return;
        }
        Model model = ModelCatalog.shipped().load(name);
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        boolean tables = options.has("--tables");
        Supplier<Judgement> judgements = tables ? Judgements.withTables(model, threads) : Judgements.net(model);
        String who = name + (tables ? " with bear-off tables, " : ", ");
        int lookahead = options.number("--lookahead", 0, 0, LookaheadSettings.MOST);
        Optional<Duration> time = options.text("--seconds").map(ScoreMain::duration);
        if (time.isEmpty()) {
            Supplier<Chooser> choosers = () -> Chooser.byPlayer(player(judgements.get(), lookahead));
            print(who + "lookahead " + lookahead + ", 1 thread", references, choosers, options);
            return;
        }
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, threads)) {
            Chooser chooser = (position, roll) ->
                    search.rank(position, roll, time.get()).get(0).play().result();
            print(
                    who + time.get().toMillis() / 1000.0 + " s, " + threads + " threads",
                    references,
                    () -> chooser,
                    options);
        }
    }

    private static Player player(Judgement judgement, int lookahead) {
        return lookahead == 0
                ? new EvaluatingPlayer(judgement.evaluator())
                : new LookaheadPlayer(new Lookahead(judgement, LookaheadSettings.DEFAULT), lookahead);
    }

    private static Duration duration(String seconds) {
        if (!seconds.matches("\\d{1,4}(\\.\\d{1,3})?")) {
            throw new IllegalArgumentException("--seconds takes something like 0.5, not '" + seconds + "'");
        }
        return Duration.ofMillis(Math.round(1000 * Double.parseDouble(seconds)));
    }

    /** Warms up with a chooser of its own, since they may remember positions. */
    private static void print(String who, List<Reference> references, Supplier<Chooser> choosers, Options options)
            throws IOException {
        if (options.text("--seconds").isEmpty()) {
            Scorer.of(references.subList(0, Math.min(WARM_UP, references.size())), choosers.get());
        }
        Scorer scorer = Scorer.of(references, choosers.get());
        System.out.print(options.has("--json") ? ScoreReport.json(who, scorer) : ScoreReport.text(who, scorer));
    }
}
