package org.pipwright.bench.start;

import java.io.IOException;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.LookaheadOption;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.TablesOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints what a net says of the start position, and what its games are like, beside printed figures. */
@Command(
        name = "start",
        description = "What a net says of the start position, and figures of its games, beside printed ones.")
public final class StartCommand extends BenchCommand {
    @Mixin
    private NetOption net;

    @Option(names = "--games", paramLabel = "N", description = "Games to play (default: ${DEFAULT-VALUE}).")
    @Within(min = 2, max = 100_000_000)
    private int games = 50_000;

    @Mixin
    private LookaheadOption lookahead;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threadsOption;

    @Mixin
    private TablesOption tables;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Override
    protected void run() throws IOException {
        int threads = threadsOption.count();
        Knowledge knowledge = Nets.knowledge(net.load(), tables.given(), threads);
        try (Judge judge = new Judge(knowledge, threads);
                SelfGames play = new SelfGames(knowledge::judgement, lookahead.rolls(), seed.value(), threads)) {
            StartReport report = new StartReport(
                    net.name(),
                    StartOdds.of(judge),
                    "lookahead " + lookahead.rolls() + (tables.given() ? " with bear-off tables" : "") + ", seed "
                            + seed.value(),
                    Played.of(play, games));
            out().print(json ? report.json() : report.text());
        }
    }
}
