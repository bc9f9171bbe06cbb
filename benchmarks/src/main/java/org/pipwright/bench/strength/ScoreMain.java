package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.pipwright.bench.Judgements;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.bench.games.Players;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;
import org.pipwright.models.ModelCatalog;

/** Prints what a net with some lookahead or with rollouts, or a fixed baseline, loses on the decisions of a reference. */
public final class ScoreMain {
    /** Seconds of choosing before the clock counts, so that code is compiled and tables are read. */
    private static final int WARM_UP = 5;

    private static final int TRUNCATION = 10;

    /** Options that say how a net is used. */
    private static final List<String> NETS_ONLY =
            List.of("--lookahead", "--seconds", "--rollout", "--truncation", "--against");

    private ScoreMain() {}

    public static void main(String[] args) {
        Main.run(args, ScoreMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options = new Options(
                args,
                Set.of(
                        "--reference",
                        "--net",
                        "--lookahead",
                        "--seconds",
                        "--rollout",
                        "--truncation",
                        "--threads",
                        "--against",
                        "--worst"),
                Set.of("--json", "--tables"));
        Path file = Path.of(options.required("--reference"));
        String name =
                options.text("--net").orElseGet(() -> ModelCatalog.shipped().defaultName());
        List<Reference> references = references(file);
        Optional<Entrant> baseline = Baselines.named(name);
        if (baseline.isPresent()) {
            for (String option : NETS_ONLY) {
                if (options.text(option).isPresent()) {
                    throw new IllegalArgumentException(option + " is for nets: " + name + " is a fixed formula");
                }
            }
            Supplier<Player> players = baseline.get().players();
            print(name, references, WARM_UP, () -> Chooser.byPlayer(players.get()), options);
        } else {
            score(name, references, options);
        }
    }

    /** Those that are known well enough. */
    private static List<Reference> references(Path file) throws IOException {
        var content = JsonLines.read(file, ReferenceHeader.class, Reference.class);
        List<Reference> exact =
                content.records().stream().filter(content.header()::exactEnough).collect(Collectors.toList());
        int left = content.records().size() - exact.size();
        if (left > 0) {
            System.err.println(left + " of " + content.records().size()
                    + " references left out: their standard errors are larger than "
                    + content.header().error());
        }
        return exact;
    }

    private static void score(String name, List<Reference> references, Options options) throws IOException {
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        boolean tables = options.has("--tables");
        Supplier<Judgement> judgements = judgements(name, tables, threads);
        String who = name + (tables ? " with bear-off tables, " : ", ");
        int lookahead = options.number("--lookahead", 0, 0, LookaheadSettings.MOST);
        int trials = options.number("--rollout", 0, 1, 10_000_000);
        Optional<Duration> time = options.text("--seconds").map(ScoreMain::duration);
        if (time.isPresent() && (trials > 0 || options.text("--lookahead").isPresent())) {
            throw new IllegalArgumentException(
                    "--seconds looks as far as it gets: leave out --lookahead and --rollout");
        }
        if (trials == 0 && options.text("--truncation").isPresent()) {
            throw new IllegalArgumentException("--truncation is about rollouts: add --rollout");
        }
        Optional<String> other = options.text("--against");
        if (other.isPresent() && (trials > 0 || time.isPresent() || options.has("--json"))) {
            throw new IllegalArgumentException(
                    "--against takes neither --rollout nor --seconds nor --json: leave them out");
        }
        if (trials > 0) {
            RolloutSettings settings = RolloutSettings.DEFAULT
                    .withTrials(trials)
                    .withLookahead(lookahead)
                    .withTruncation(options.number("--truncation", TRUNCATION, 0, 10_000));
            rollOut(who, references, judgements, settings, threads, options);
        } else if (time.isPresent()) {
            search(who, references, judgements, time.get(), threads, options);
        } else {
            Supplier<Chooser> choosers = () -> Chooser.byPlayer(Players.of(judgements.get(), lookahead));
            Scorer scorer =
                    print(who + "lookahead " + lookahead + ", 1 thread", references, WARM_UP, choosers, options);
            if (other.isPresent()) {
                Judgement theirs = judgements(other.get(), tables, threads).get();
                compare(scorer, Scorer.of(references, Chooser.byPlayer(Players.of(theirs, lookahead))), other.get());
            }
        }
    }

    private static Supplier<Judgement> judgements(String net, boolean tables, int threads) {
        Model model = ModelCatalog.shipped().load(net);
        return tables ? Judgements.withTables(model, threads) : Judgements.net(model);
    }

    private static void compare(Scorer scorer, Scorer other, String name) {
        Score more = scorer.beyond(other);
        System.out.printf(
                Locale.ROOT,
                "loses %+.5f ± %.5f a decision more than %s, decision by decision%n",
                more.meanLoss(),
                more.lossError(),
                name);
    }

    private static void rollOut(
            String who,
            List<Reference> references,
            Supplier<Judgement> judgements,
            RolloutSettings settings,
            int threads,
            Options options)
            throws IOException {
        // A chooser of its own for each use: the dice of a decision depend on how many were before it.
        try (RolloutChooser first = new RolloutChooser(judgements, settings, threads);
                RolloutChooser second = new RolloutChooser(judgements, settings, threads)) {
            Iterator<Chooser> choosers = List.<Chooser>of(first, second).iterator();
            String how = String.format(
                    Locale.ROOT,
                    "rollouts of %d games at lookahead %d%s, %d threads",
                    settings.trials(),
                    settings.lookahead(),
                    settings.truncation() == 0 ? "" : ", broken off after " + settings.truncation() + " rolls",
                    threads);
            print(who + how, references, WARM_UP, choosers::next, options);
        }
    }

    private static void search(
            String who,
            List<Reference> references,
            Supplier<Judgement> judgements,
            Duration time,
            int threads,
            Options options)
            throws IOException {
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, threads)) {
            Chooser chooser = (position, roll) ->
                    search.rank(position, roll, time).get(0).play().result();
            print(
                    who + time.toMillis() / 1000.0 + " s, " + threads + " threads",
                    references,
                    0,
                    () -> chooser,
                    options);
        }
    }

    private static Duration duration(String seconds) {
        if (!seconds.matches("\\d{1,4}(\\.\\d{1,3})?")) {
            throw new IllegalArgumentException("--seconds takes something like 0.5, not '" + seconds + "'");
        }
        return Duration.ofMillis(Math.round(1000 * Double.parseDouble(seconds)));
    }

    /** Warms up with a chooser of its own, since they may remember positions. */
    private static Scorer print(
            String who, List<Reference> references, int warmUp, Supplier<Chooser> choosers, Options options)
            throws IOException {
        int worst = options.number("--worst", 0, 1, references.size());
        if (worst > 0 && options.has("--json")) {
            throw new IllegalArgumentException("--worst is for people: leave out --json");
        }
        if (warmUp > 0) {
            Scorer.warmUp(references, choosers.get(), Duration.ofSeconds(warmUp));
        }
        Scorer scorer = Scorer.of(references, choosers.get());
        System.out.print(options.has("--json") ? ScoreReport.json(who, scorer) : ScoreReport.text(who, scorer));
        System.out.print(ScoreReport.worst(scorer, worst));
        return scorer;
    }
}
