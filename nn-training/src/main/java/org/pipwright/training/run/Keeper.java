package org.pipwright.training.run;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.OpeningChoices;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.report.RunReports;
import org.pipwright.training.settings.TrainingSettings;

/** Writes what a run leaves behind; waits where the disk is full. */
final class Keeper {
    private final RunFolder folder;
    private final TrainingListener listener;
    private final ReportPage page;
    private final BooleanSupplier stop;
    private final long retryMillis;
    private MetricsFile metrics;
    private OpeningChoices openings;

    Keeper(RunFolder folder, TrainingListener listener, ReportPage page, BooleanSupplier stop, long retryMillis) {
        this.folder = folder;
        this.listener = listener;
        this.page = page;
        this.stop = stop;
        this.retryMillis = retryMillis;
    }

    /** Something to write. */
    @FunctionalInterface
    private interface Writing {
        void run() throws IOException;
    }

    /** Reads what the run has left of its first games; returns the last figures of them, or null if there are none. */
    Metrics begin(long games) {
        try {
            metrics = MetricsFile.open(folder.metricsFile(), games);
            openings = OpeningChoices.open(folder.openingsFile(), games);
            List<Metrics> lines = metrics.lines();
            return lines.isEmpty() ? null : lines.get(lines.size() - 1);
        } catch (IOException e) {
            throw new InvalidRunException("cannot read the figures of the run: " + Reason.of(e));
        }
    }

    /** Adds to the manifest what a process goes on with, after those before it. */
    void manifest(Map<String, String> provenance, long games) {
        StringBuilder text = new StringBuilder(manifestSoFar());
        if (text.length() > 0) {
            text.append("\nresumed = after ").append(games).append(" games\n");
        }
        folder.preset()
                .ifPresent(preset ->
                        text.append("preset = ").append(preset.words()).append('\n'));
        provenance.forEach(
                (name, fact) -> text.append(name).append(" = ").append(fact).append('\n'));
        insist("the manifest", () -> RunFiles.write(folder.manifestFile(), text.toString()));
    }

    private String manifestSoFar() {
        try {
            return Files.exists(folder.manifestFile()) ? Files.readString(folder.manifestFile()) : "";
        } catch (IOException e) {
            throw new InvalidRunException("cannot read '" + folder.manifestFile() + "': " + Reason.of(e));
        }
    }

    /** Whether the net beside the checkpoints is whole and that of so many games. */
    boolean holdsNetOf(long games) {
        try {
            return Long.toString(games)
                    .equals(ModelFile.read(folder.modelFile()).notes().get("games"));
        } catch (InvalidModelException e) {
            return false;
        }
    }

    void evaluated(Metrics latest, Model model, TrainingSettings settings) {
        metrics.add(latest);
        openings.add(latest.games(), model);
        insist("the figures", () -> {
            metrics.write();
            openings.write();
        });
        report(settings);
    }

    /** Writes the report of what has been evaluated so far, which a machine without fonts may have left without charts. */
    void report(TrainingSettings settings) {
        Optional<String> html = page.of(RunReports.of(metrics.lines(), openings, settings));
        if (html.isPresent()) {
            insist("the report", () -> RunFiles.write(folder.reportFile(), html.get()));
        }
    }

    void save(Checkpoint checkpoint, Model model) {
        insist("a checkpoint", () -> {
            folder.write(checkpoint);
            ModelFile.write(folder.modelFile(), model);
        });
    }

    /** Tries until it works, since a full disk may be emptied; gives up when the run is told to stop. */
    private void insist(String what, Writing writing) {
        for (boolean first = true; ; first = false) {
            try {
                writing.run();
                return;
            } catch (IOException e) {
                String problem = "cannot write " + what + ": " + Reason.of(e);
                if (stop.getAsBoolean()) {
                    throw new InvalidRunException(problem + "; --resume goes on from the checkpoint before");
                }
                if (first) {
                    listener.warning(problem + "; training pauses and goes on when it can");
                }
                pause();
            }
        }
    }

    private void pause() {
        try {
            Thread.sleep(retryMillis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InvalidRunException("interrupted while waiting for room on the disk");
        }
    }
}
