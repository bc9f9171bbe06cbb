package org.pipwright.training.run;

import org.pipwright.engine.bearoff.Basis;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactFirstEvaluator;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableHorizon;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.search.Judgement;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** What the players of a run think with: the networks alone, or the exact tables first. */
final class Judges {
    private final EndgameTables tables;

    Judges(TrainingSettings settings, TableFolder folder, int threads) {
        boolean wanted = settings.text(Setting.ENDS).equals("tables");
        tables = wanted ? EndgameTables.standard(folder, threads, TableListener.SILENT) : null;
    }

    /** One for each thread. */
    Judgement of(Model model) {
        NetworkEvaluator networks = new NetworkEvaluator(model);
        return tables == null
                ? Judgement.by(networks)
                : new Judgement(
                        new ExactFirstEvaluator(tables, networks), new TableHorizon(tables, Basis.DISTRIBUTIONS));
    }
}
