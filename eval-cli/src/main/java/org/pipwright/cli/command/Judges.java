package org.pipwright.cli.command;

import java.util.function.Supplier;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.report.TableNotes;
import org.pipwright.engine.bearoff.Basis;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactFirstEvaluator;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableHorizon;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;

/** What commands that look ahead judge with: the tables where they know, the net elsewhere. */
final class Judges {
    private Judges() {}

    /** Makes one judgement a thread; the tables are opened or built at first need and shared. */
    static Supplier<Judgement> of(Model model, int threads, Console console) {
        EndgameTables tables =
                EndgameTables.standard(TableFolder.ofUser(System.getenv()), threads, new TableNotes(console));
        return () -> new Judgement(
                new ExactFirstEvaluator(tables, new NetworkEvaluator(model)), new TableHorizon(tables, Basis.EXACT));
    }
}
