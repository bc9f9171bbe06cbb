package org.pipwright.bench.exact;

import java.io.IOException;
import java.util.function.Supplier;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.TablesOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.reduced.PolicyValue;
import org.pipwright.engine.reduced.ReducedTable;
import org.pipwright.engine.search.Judgement;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints what a net's plays are worth against the best player of a reduced game, exactly. */
@Command(
        name = "policy",
        description = "What a net's plays are worth against the best player of a reduced game, exactly.")
public final class PolicyCommand extends BenchCommand {
    @Mixin
    private ReducedGameOptions game;

    @Mixin
    private NetOption net;

    @Mixin
    private TablesOption tables;

    @Mixin
    private ThreadsOption threadsOption;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Override
    protected void run() throws IOException {
        int checkers = game.checkers();
        int threads = threadsOption.count();
        Model model = net.load();
        ReducedTable table = new SolvedGames(System.err).table(checkers, game.file(), threads);
        Supplier<Judgement> judgements = tables.judgements(model, threads);
        PolicyValue value = PolicyValue.of(table, () -> judgements.get().evaluator(), threads);
        out().print(json ? PolicyReport.json(checkers, value) : PolicyReport.text(checkers, value));
    }
}
