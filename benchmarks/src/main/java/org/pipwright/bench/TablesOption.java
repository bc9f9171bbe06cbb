package org.pipwright.bench;

import java.util.function.Supplier;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;
import picocli.CommandLine.Option;

/** Whether the bear-off tables are asked before the net. */
public final class TablesOption {
    @Option(names = "--tables", description = "Ask the bear-off tables first; games end where they are exact.")
    private boolean tables;

    /** Whether they are. */
    public boolean given() {
        return tables;
    }

    /** What judges with them, or without. */
    public Supplier<Judgement> judgements(Model model, int threads) {
        return Nets.knowledge(model, tables, threads)::judgement;
    }
}
