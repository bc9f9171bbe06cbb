package org.pipwright.cli.command;

import java.util.function.Supplier;
import org.pipwright.engine.bearoff.Basis;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactFirstEvaluator;
import org.pipwright.engine.bearoff.TableHorizon;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;

/** What commands that look ahead judge with: the tables where they know, the net elsewhere. */
final class Judges {
    private Judges() {}

    /** Makes one judgement a thread; the tables are shared. */
    static Supplier<Judgement> of(Model model, EndgameTables tables) {
        return () -> new Judgement(
                new ExactFirstEvaluator(tables, new NetworkEvaluator(model)), new TableHorizon(tables, Basis.EXACT));
    }
}
