package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.LookaheadOption;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.TablesOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
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
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints what a net with some lookahead or with rollouts, or a fixed baseline, loses on the decisions of a reference. */
@Command(name = "score", description = "What a net or a fixed baseline loses on the decisions of a reference.")
public final class ScoreCommand extends BenchCommand {
    /** Seconds of choosing before the clock counts, so that code is compiled and tables are read. */
    private static final int WARM_UP = 5;

    private static final int TRUNCATION = 10;

    /** Options that say how a net is used. */
    private static final List<String> NETS_ONLY =
            List.of("--lookahead", "--seconds", "--rollout", "--truncation", "--against");

    @Option(names = "--reference", required = true, paramLabel = "FILE", description = "The reference.")
    private Path file;

    @Mixin
    private NetOption net;

    @Mixin
    private LookaheadOption lookahead;

    @Option(names = "--seconds", paramLabel = "S", description = "Look ahead as far as the time for a choice allows.")
    private String seconds;

    @Option(names = "--rollout", paramLabel = "N", description = "Games for each play that lookahead 1 keeps.")
    @Within(min = 1, max = 10_000_000)
    private Integer trials;

    @Option(
            names = "--truncation",
            paramLabel = "N",
            description = "Rolls after which such a game is truncated (default: ${DEFAULT-VALUE}; 0: never).")
    @Within(min = 0, max = 10_000)
    private int truncation = TRUNCATION;

    @Mixin
    private TablesOption tables;

    @Mixin
    private ThreadsOption threads;

    @Option(names = "--against", paramLabel = "NET", description = "Compare with this net decision by decision.")
    private String other;

    @Option(names = "--worst", paramLabel = "N", description = "Print the costliest choices.")
    @Within(min = 1, max = 1_000_000)
    private Integer worst;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Override
    protected void run() throws IOException {
        List<Reference> references = references(file);
        Optional<Entrant> baseline = Baselines.named(net.name());
        if (baseline.isPresent()) {
            for (String option : NETS_ONLY) {
                if (given(option)) {
                    throw new IllegalArgumentException(option + " is for nets: " + net.name() + " is a fixed formula");
                }
            }
            Supplier<Player> players = baseline.get().players();
            print(net.name(), references, WARM_UP, () -> Chooser.byPlayer(players.get()));
        } else {
            score(references);
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

    private void score(List<Reference> references) throws IOException {
        Optional<Duration> time = Optional.ofNullable(seconds).map(ScoreCommand::duration);
        if (time.isPresent() && (trials != null || given("--lookahead"))) {
            throw new IllegalArgumentException(
                    "--seconds looks as far as it gets: leave out --lookahead and --rollout");
        }
        if (trials == null && given("--truncation")) {
            throw new IllegalArgumentException("--truncation is about rollouts: add --rollout");
        }
        if (other != null && (trials != null || time.isPresent() || json)) {
            throw new IllegalArgumentException(
                    "--against takes neither --rollout nor --seconds nor --json: leave them out");
        }
        Supplier<Judgement> judgements = tables.judgements(net.load(), threads.count());
        String who = net.name() + (tables.given() ? " with bear-off tables, " : ", ");
        if (trials != null) {
            RolloutSettings settings = RolloutSettings.DEFAULT
                    .withTrials(trials)
                    .withLookahead(lookahead.rolls())
                    .withTruncation(truncation);
            rollOut(who, references, judgements, settings);
        } else if (time.isPresent()) {
            search(who, references, judgements, time.get());
        } else {
            Supplier<Chooser> choosers = () -> Chooser.byPlayer(Players.of(judgements.get(), lookahead.rolls()));
            Scorer scorer = print(who + "lookahead " + lookahead.rolls() + ", 1 thread", references, WARM_UP, choosers);
            if (other != null) {
                Model model = ModelCatalog.shipped().load(other);
                Judgement theirs = tables.judgements(model, threads.count()).get();
                compare(scorer, Scorer.of(references, Chooser.byPlayer(Players.of(theirs, lookahead.rolls()))));
            }
        }
    }

    private void compare(Scorer scorer, Scorer theirs) {
        Score more = scorer.beyond(theirs);
        out().printf(
                        Locale.ROOT,
                        "loses %+.5f ± %.5f a decision more than %s, decision by decision%n",
                        more.meanLoss(),
                        more.lossError(),
                        other);
    }

    private void rollOut(
            String who, List<Reference> references, Supplier<Judgement> judgements, RolloutSettings settings)
            throws IOException {
        // A chooser of its own for each use: the dice of a decision depend on how many were before it.
        try (RolloutChooser first = new RolloutChooser(judgements, settings, threads.count());
                RolloutChooser second = new RolloutChooser(judgements, settings, threads.count())) {
            Iterator<Chooser> choosers = List.<Chooser>of(first, second).iterator();
            String how = String.format(
                    Locale.ROOT,
                    "rollouts of %d games at lookahead %d%s, %d threads",
                    settings.trials(),
                    settings.lookahead(),
                    settings.truncation() == 0 ? "" : ", truncated after " + settings.truncation() + " rolls",
                    threads.count());
            print(who + how, references, WARM_UP, choosers::next);
        }
    }

    private void search(String who, List<Reference> references, Supplier<Judgement> judgements, Duration time)
            throws IOException {
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, threads.count())) {
            Chooser chooser = (position, roll) ->
                    search.rank(position, roll, time).get(0).play().result();
            print(who + time.toMillis() / 1000.0 + " s, " + threads.count() + " threads", references, 0, () -> chooser);
        }
    }

    private static Duration duration(String seconds) {
        if (!seconds.matches("\\d{1,4}(\\.\\d{1,3})?")) {
            throw new IllegalArgumentException("--seconds takes something like 0.5, not '" + seconds + "'");
        }
        return Duration.ofMillis(Math.round(1000 * Double.parseDouble(seconds)));
    }

    /** Warms up with a chooser of its own, since they may remember positions. */
    private Scorer print(String who, List<Reference> references, int warmUp, Supplier<Chooser> choosers)
            throws IOException {
        if (worst != null && json) {
            throw new IllegalArgumentException("--worst is for people: leave out --json");
        }
        if (warmUp > 0) {
            Scorer.warmUp(references, choosers.get(), Duration.ofSeconds(warmUp));
        }
        Scorer scorer = Scorer.of(references, choosers.get());
        out().print(json ? ScoreReport.json(who, scorer) : ScoreReport.text(who, scorer));
        out().print(ScoreReport.worst(scorer, worst == null ? 0 : worst));
        return scorer;
    }
}
