package org.pipwright.training.run;

import java.nio.file.Path;
import java.util.Optional;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.settings.GameEnd;
import org.pipwright.training.settings.TargetKind;
import org.pipwright.training.settings.TrainingSettings;

/** What the players of a run think with: the networks alone, or the exact tables first; and the net they learn from. */
final class RunKnowledge {
    private final EndgameTables tables;
    private final Optional<Model> teacher;

    /**
     * What a run thinks with.
     *
     * @param teacher the net that gives targets, where the settings want one
     */
    RunKnowledge(TrainingSettings settings, TableFolder folder, int threads, Optional<Model> teacher) {
        this.teacher = teacher;
        boolean wanted = settings.games().end() == GameEnd.TABLES;
        tables = wanted ? EndgameTables.standard(folder, threads, TableListener.SILENT) : null;
    }

    /** The net of {@code target.net}; none if targets are not a net's. */
    static Optional<Model> teacher(TrainingSettings settings) {
        if (settings.targets().kind() != TargetKind.NET) {
            return Optional.empty();
        }
        Path file = settings.targets()
                .net()
                .orElseThrow(
                        () -> new InvalidRunException("targets = net needs a net: set target.net to a model file"));
        try {
            return Optional.of(ModelFile.read(file));
        } catch (InvalidModelException e) {
            throw new InvalidRunException("target.net: " + e.getMessage());
        }
    }

    /** The net that gives targets; none if none does. */
    Optional<Model> teacher() {
        return teacher;
    }

    /** What answers as that net does, or the exact tables first, for one thread. */
    PositionEvaluator taught() {
        return of(teacher.orElseThrow()).judgement().evaluator();
    }

    /** What is known with a net; games end where the tables know the rest. */
    Knowledge of(Model model) {
        Knowledge net = Knowledge.of(model);
        return tables == null ? net : net.with(tables, Basis.DISTRIBUTIONS);
    }
}
