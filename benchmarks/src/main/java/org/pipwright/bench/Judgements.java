package org.pipwright.bench;

import java.util.function.Supplier;
import org.pipwright.engine.bearoff.Basis;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactFirstEvaluator;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableHorizon;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;

/** What searches and rollouts judge with. */
public final class Judgements {
    private Judgements() {}

    /** The net alone. */
    public static Supplier<Judgement> net(Model model) {
        return () -> Judgement.by(new NetworkEvaluator(model));
    }

    /** The bear-off tables in the user's cache folder first, then the net; games end where their chances are exact. */
    public static Supplier<Judgement> withTables(Model model, int threads) {
        TableFolder folder = TableFolder.ofUser(System.getenv());
        EndgameTables tables = EndgameTables.standard(folder, threads, TableListener.SILENT);
        return () -> new Judgement(
                new ExactFirstEvaluator(tables, new NetworkEvaluator(model)), new TableHorizon(tables, Basis.EXACT));
    }
}
