package org.pipwright.bench.start;

import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.pipwright.bench.Judgements;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;
import org.pipwright.models.ModelCatalog;

/** Prints what a net says of the start position, and what its games are like, beside printed figures. */
public final class StartMain {
    private StartMain() {}

    public static void main(String[] args) {
        Main.run(args, words -> run(words, System.out));
    }

    static void run(List<String> args, PrintStream out) throws IOException {
        Options options = new Options(
                args, Set.of("--net", "--games", "--lookahead", "--seed", "--threads"), Set.of("--json", "--tables"));
        String net = options.text("--net").orElse(ModelCatalog.shipped().defaultName());
        int games = options.number("--games", 50_000, 2, 100_000_000);
        int lookahead = options.number("--lookahead", 0, 0, LookaheadSettings.MOST);
        int seed = options.number("--seed", 1, 0, Integer.MAX_VALUE);
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        boolean tables = options.has("--tables");
        Model model = ModelCatalog.shipped().load(net);
        Supplier<Judgement> judgements = tables ? Judgements.withTables(model, threads) : Judgements.net(model);
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, threads);
                SelfGames play = new SelfGames(judgements, lookahead, seed, threads)) {
            StartReport report = new StartReport(
                    net,
                    StartOdds.of(search),
                    "lookahead " + lookahead + (tables ? " with bear-off tables" : "") + ", seed " + seed,
                    Played.of(play, games));
            out.print(options.has("--json") ? report.json() : report.text());
        }
    }
}
