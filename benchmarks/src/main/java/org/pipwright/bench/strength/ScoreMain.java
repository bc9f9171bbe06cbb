package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
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
            print(name, references, byPlayer(baseline.get().players().get()), options);
            return;
        }
        Model model = ModelCatalog.shipped().load(name);
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        boolean tables = options.has("--tables");
        Supplier<Judgement> judgements = tables ? Judgements.withTables(model, threads) : Judgements.net(model);
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, threads)) {
            Optional<Duration> time = options.text("--seconds").map(ScoreMain::duration);
            int lookahead = options.number("--lookahead", 0, 0, LookaheadSettings.MOST);
            Chooser chooser = (position, roll) -> time.map(limit -> search.rank(position, roll, limit))
                    .orElseGet(() -> search.rank(position, roll, lookahead))
                    .get(0)
                    .play();
            String how = time.map(limit -> limit.toMillis() / 1000.0 + " s").orElse("lookahead " + lookahead);
            print(
                    name + (tables ? " with bear-off tables, " : ", ") + how + ", " + threads + " threads",
                    references,
                    chooser,
                    options);
        }
    }

    private static Duration duration(String seconds) {
        if (!seconds.matches("\\d{1,4}(\\.\\d{1,3})?")) {
            throw new IllegalArgumentException("--seconds takes something like 0.5, not '" + seconds + "'");
        }
        return Duration.ofMillis(Math.round(1000 * Double.parseDouble(seconds)));
    }

    private static void print(String who, List<Reference> references, Chooser chooser, Options options)
            throws IOException {
        if (options.text("--seconds").isEmpty()) {
            Scorer.of(references.subList(0, Math.min(WARM_UP, references.size())), chooser);
        }
        Scorer scorer = Scorer.of(references, chooser);
        System.out.print(options.has("--json") ? ScoreReport.json(who, scorer) : ScoreReport.text(who, scorer));
    }

    static Chooser byPlayer(Player player) {
        PlayGenerator generator = new PlayGenerator();
        Dice ties = Dice.ofGame(1, 1);
        return (Position position, Roll roll) -> {
            int[] planes = position.toPlanes();
            generator.generate(planes, 0, roll.high(), roll.low());
            int chosen = player.choose(planes, 0, generator, ties);
            Play play = Plays.to(position, roll, generator.results(), chosen * Planes.STRIDE);
            return play;
        };
    }
}
