package org.pipwright.training.cuda;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.report.OpeningChoices;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.run.InvalidRunException;
import org.pipwright.training.run.RunFiles;
import org.pipwright.training.settings.SettingValues;

/**
 * Writes what a run leaves behind. What cannot be written while the run goes on costs a warning, since the card should not
 * wait; at the end it is an error.
 */
final class RunBooks {
    private static final String FINISHED = "finished = ";

    private final CardFolder folder;
    private final SettingValues<CardSetting> settings;
    private final Recipe recipe;
    private final List<String> names;
    private final ReportPage page;
    private final Consumer<String> say;
    private final List<Figures> lines = new ArrayList<>();
    private Map<String, String> provenance = Map.of();
    private OpeningChoices openings;

    RunBooks(
            CardFolder folder,
            SettingValues<CardSetting> settings,
            Recipe recipe,
            ReportPage page,
            Consumer<String> say) {
        this.folder = folder;
        this.settings = settings;
        this.recipe = recipe;
        this.page = page;
        this.say = say;
        names = IntStream.range(0, recipe.shapes().size())
                .mapToObj(recipe::name)
                .toList();
    }

    /** Where the run stands; reads its figures up to there. */
    Optional<RunState> begin() {
        Optional<RunState> newest = folder.newest(recipe.shapes(), say);
        double seconds = newest.map(RunState::seconds).orElse(0.0);
        try {
            openings = OpeningChoices.open(
                    folder.openingsFile(), newest.map(RunState::games).orElse(0L));
            if (Files.exists(folder.figuresFile())) {
                Files.readAllLines(folder.figuresFile(), StandardCharsets.UTF_8).stream()
                        .skip(1)
                        .map(line -> Figures.ofCsv(line, names.size()))
                        .filter(line -> line.seconds() <= seconds + 0.05)
                        .forEach(lines::add);
            }
        } catch (NumberFormatException e) {
            throw new InvalidRunException(
                    "'" + folder.figuresFile() + "' is not as this run wrote it: move it away to go on without");
        } catch (IOException e) {
            throw new InvalidRunException("cannot read the figures of the run: " + Reason.of(e));
        }
        return newest;
    }

    /** Whether the run has nothing left to do and all its nets are whole. */
    boolean finished(RunState state) {
        String[] sections = manifestSoFar().split("(?m)^resumed = ");
        return state.seconds() >= 60 * recipe.minutes()
                && sections[sections.length - 1].contains(FINISHED)
                && folder.modelFiles(recipe).stream().allMatch(RunBooks::isWhole);
    }

    private static boolean isWhole(Path file) {
        try {
            ModelFile.read(file);
            return true;
        } catch (InvalidModelException e) {
            return false;
        }
    }

    private String manifestSoFar() {
        try {
            return Files.exists(folder.manifestFile()) ? Files.readString(folder.manifestFile()) : "";
        } catch (IOException e) {
            throw new InvalidRunException("cannot read '" + folder.manifestFile() + "': " + Reason.of(e));
        }
    }

    /** Adds to the manifest what a process goes on with, after those before it. */
    void manifest(Map<String, String> facts, long targets) {
        provenance = new LinkedHashMap<>(facts);
        StringBuilder text = new StringBuilder(manifestSoFar());
        if (text.length() > 0) {
            text.append("\nresumed = after ").append(targets).append(" targets\n");
        }
        facts.forEach(
                (name, fact) -> text.append(name).append(" = ").append(fact).append('\n'));
        insist("the manifest", () -> RunFiles.write(folder.manifestFile(), text.toString()));
    }

    /** Adds that the run is over. */
    void finish() {
        String text = manifestSoFar() + FINISHED + Instant.now().truncatedTo(ChronoUnit.SECONDS) + "\n";
        insist("the manifest", () -> RunFiles.write(folder.manifestFile(), text));
        if (!lines.isEmpty()) {
            report();
        }
    }

    /** Something to write. */
    @FunctionalInterface
    private interface Writing {
        void run() throws IOException;
    }

    private static void insist(String what, Writing writing) {
        try {
            writing.run();
        } catch (IOException e) {
            throw new InvalidRunException("cannot write " + what + ": " + Reason.of(e));
        }
    }

    /**
     * Writes the nets and a checkpoint.
     *
     * @param last whether nothing comes after it, so that failing is an error
     * @throws InvalidRunException if it fails and is the last, or if training has diverged; the checkpoint before stays
     */
    synchronized void save(RunState state, boolean last) {
        Writing writing = () -> {
            writeNets(state);
            folder.write(state, recipe.checkpointsKept());
        };
        if (last) {
            insist("a checkpoint", writing);
            return;
        }
        try {
            writing.run();
        } catch (IOException e) {
            say.accept("warning: cannot write a checkpoint: " + Reason.of(e) + "; training goes on without");
        }
    }

    private void writeNets(RunState state) throws IOException {
        for (int net = 0; net < state.nets().size(); net++) {
            try {
                ModelFile.write(
                        folder.modelFile(recipe, net), model(net, state.nets().get(net), notes(state)));
            } catch (InvalidModelException e) {
                throw new InvalidRunException("training of " + names.get(net) + " has diverged (" + e.getMessage()
                        + "): set a lower rate; --resume goes on from the checkpoint before");
            }
        }
    }

    private Model model(int net, NetState state, Map<String, String> notes) {
        return new Model(ResidualNets.network(recipe.shapes().get(net), state.average()), notes);
    }

    private Map<String, String> notes(RunState state) {
        Map<String, String> notes = new LinkedHashMap<>();
        notes.put("games", Long.toString(state.games()));
        notes.put("targets", Long.toString(state.targets()));
        notes.put("minutes", String.format(Locale.ROOT, "%.1f", state.seconds() / 60));
        notes.put("licence", "Apache-2.0");
        notes.put("settings", settings.differences());
        notes.put("commit", provenance.getOrDefault("commit", "unknown"));
        notes.put(
                "machine",
                provenance.getOrDefault("machine", "unknown") + ", " + provenance.getOrDefault("device", "unknown"));
        return notes;
    }

    /** Adds figures and the deep network's opening plays, and makes the report anew. */
    synchronized void evaluated(Figures figures, NetState deep) {
        lines.add(figures);
        if (deep.isFinite()) {
            openings.add(figures.games(), model(Recipe.DEEP, deep, Map.of()));
        }
        try {
            StringBuilder text = new StringBuilder(Figures.header(names)).append('\n');
            lines.forEach(line -> text.append(line.toCsv()).append('\n'));
            RunFiles.write(folder.figuresFile(), text.toString());
            openings.write();
            report();
        } catch (IOException e) {
            say.accept("warning: cannot write the figures: " + Reason.of(e));
        }
    }

    /** Makes the report of what has been evaluated so far, if anything was. */
    void report() {
        if (lines.isEmpty()) {
            return;
        }
        Optional<String> html =
                page.of(CardReport.of(lines, names, openings, settings.text(CardSetting.RIVAL), settings.toText()));
        try {
            if (html.isPresent()) {
                RunFiles.write(folder.reportFile(), html.get());
            }
        } catch (IOException e) {
            say.accept("warning: cannot write the report: " + Reason.of(e));
        }
    }

    /** When strength was evaluated last, in seconds of training; not a number if it never was. */
    synchronized double lastEvaluated() {
        return lines.isEmpty() ? Double.NaN : lines.get(lines.size() - 1).seconds();
    }

    /** Figures so far, oldest first. */
    List<Figures> lines() {
        return List.copyOf(lines);
    }
}
