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
import org.pipwright.bench.Nets;
import org.pipwright.bench.TablesOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.rollout.RolloutSettings;
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
    static List<Reference> references(Path file) throws IOException {
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
        Model model = net.load();
        String who = net.name() + (tables.given() ? " with bear-off tables, " : ", ");
        if (trials != null) {
            RolloutSettings settings = RolloutSettings.DEFAULT
                    .withTrials(trials)
                    .withLookahead(lookahead.rolls())
                    .withTruncation(truncation);
            rollOut(who, references, model, settings);
        } else if (time.isPresent()) {
            search(who, references, model, time.get());
        } else {
            lookAhead(who, references, model);
        }
    }

    private Knowledge knowledge(Model model) {
        return Nets.knowledge(model, tables.given(), threads.count());
    }

    private void lookAhead(String who, List<Reference> references, Model model) throws IOException {
        Effort effort = Effort.lookahead(lookahead.rolls());
        // Judges that know the same share a memory: the one that warms up must not fill that of the other.
        try (Judge first = new Judge(knowledge(model), 1);
                Judge second = new Judge(knowledge(model), 1)) {
            Iterator<Judge> judges = List.of(first, second).iterator();
            Scorer scorer = print(
                    who + "lookahead " + lookahead.rolls() + ", 1 thread",
                    references,
                    WARM_UP,
                    () -> Chooser.byJudge(judges.next(), effort));
            if (other != null) {
                Model theirs = ModelCatalog.shipped().load(other);
                try (Judge judge = new Judge(knowledge(theirs), 1)) {
                    compare(scorer, Scorer.of(references, Chooser.byJudge(judge, effort)));
                }
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

    private void rollOut(String who, List<Reference> references, Model model, RolloutSettings settings)
            throws IOException {
        // A chooser of its own for each use: the dice of a decision depend on how many were before it.
        try (RolloutChooser first = new RolloutChooser(knowledge(model), settings, threads.count());
                RolloutChooser second = new RolloutChooser(knowledge(model), settings, threads.count())) {
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

    private void search(String who, List<Reference> references, Model model, Duration time) throws IOException {
        try (Judge judge = new Judge(knowledge(model), threads.count())) {
            Chooser chooser = Chooser.byJudge(judge, Effort.within(time));
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
