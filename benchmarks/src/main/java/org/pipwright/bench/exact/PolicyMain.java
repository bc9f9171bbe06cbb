package org.pipwright.bench.exact;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.pipwright.bench.Judgements;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.reduced.PolicyValue;
import org.pipwright.engine.reduced.ReducedTable;
import org.pipwright.engine.search.Judgement;
import org.pipwright.models.ModelCatalog;

/** Prints what a net's plays are worth against the best player of a reduced game, exactly. */
public final class PolicyMain {
    private PolicyMain() {}

    public static void main(String[] args) {
        Main.run(args, PolicyMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options =
                new Options(args, Set.of("--checkers", "--net", "--table", "--threads"), Set.of("--json", "--tables"));
        int checkers = options.number("--checkers", 2, 1, 3);
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        Model model = ModelCatalog.shipped().load(options.required("--net"));
        Path file = options.text("--table").map(Path::of).orElse(SolvedGames.defaultFile(checkers));
        ReducedTable table = new SolvedGames(System.err).table(checkers, file, threads);
        Supplier<Judgement> judgements =
                options.has("--tables") ? Judgements.withTables(model, threads) : Judgements.net(model);
        PolicyValue value = PolicyValue.of(table, () -> judgements.get().evaluator(), threads);
        System.out.print(
                options.has("--json") ? PolicyReport.json(checkers, value) : PolicyReport.text(checkers, value));
    }
}
