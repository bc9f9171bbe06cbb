package org.pipwright.training.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.settings.EvaluationSettings;
import org.pipwright.training.settings.InvalidSettingsException;
import org.pipwright.training.settings.Preset;
import org.pipwright.training.settings.TrainingSettings;

/** The folder of a run and the files in it. */
public final class RunFolder {
    /** Newest checkpoints that are kept. */
    private static final int KEPT = 3;

    private static final String PREFIX = "checkpoint-";
    private static final String SUFFIX = ".state";

    private final Path folder;
    private final TableFolder tables;
    private final Optional<Preset> preset;
    private final Function<String, Model> nets;

    private RunFolder(Path folder, TableFolder tables, Optional<Preset> preset, Function<String, Model> nets) {
        this.folder = folder;
        this.tables = tables;
        this.preset = preset;
        this.nets = nets;
    }

    private static RunFolder at(Path folder) {
        return new RunFolder(
                folder, TableFolder.ofUser(System.getenv()), Optional.empty(), file -> ModelFile.read(Path.of(file)));
    }

    /**
     * The same run, with nets known by name too.
     *
     * @param nets gives the net of a name or a file; throws an {@link InvalidModelException} if there is none
     * @return a folder for the same run
     */
    public RunFolder withNets(Function<String, Model> nets) {
        return new RunFolder(folder, tables, preset, nets);
    }

    /** The net that strength is evaluated against; empty for the baseline. */
    Optional<Model> rival() {
        EvaluationSettings evaluation = settings().evaluation();
        if (!evaluation.byNet()) {
            return Optional.empty();
        }
        try {
            return Optional.of(nets.apply(evaluation.rival()));
        } catch (InvalidModelException e) {
            throw new InvalidRunException("evaluation.rival: " + e.getMessage());
        }
    }

    /**
     * The same run, with its exact tables kept elsewhere than in the user's folder.
     *
     * @param folder where they are, or are built at first need
     * @return a folder for the same run
     */
    public RunFolder withTables(TableFolder folder) {
        return new RunFolder(this.folder, folder, preset, nets);
    }

    /**
     * The same run, with a note in its manifest of the preset its settings come from.
     *
     * @param preset the preset
     * @return a folder for the same run
     */
    public RunFolder withPreset(Preset preset) {
        return new RunFolder(folder, tables, Optional.of(preset), nets);
    }

    Optional<Preset> preset() {
        return preset;
    }

    TableFolder tables() {
        return tables;
    }

    private Path teacherFile() {
        return folder.resolve("target.safetensors");
    }

    /** The net that gives targets, as it was when the run began; none if there is none. */
    Optional<Model> teacher() {
        return Files.exists(teacherFile()) ? Optional.of(ModelFile.read(teacherFile())) : Optional.empty();
    }

    /** Keeps the run to this process while something is done. */
    <T> T locked(Consumer<String> warn, Supplier<T> work) {
        RunLock lock = RunLock.take(folder, warn);
        try {
            return work.get();
        } finally {
            lock.close();
        }
    }

    /**
     * Makes the folder of a new run.
     *
     * @param folder a folder that is missing or empty
     * @param settings written into it
     * @return the run's folder
     * @throws InvalidRunException if the folder is in use (also by another process that begins a run) or cannot be made, start.net does not fit, or
     *     target.net cannot be read
     * @throws org.pipwright.engine.network.InvalidModelException if start.net cannot be read
     */
    public static RunFolder create(Path folder, TrainingSettings settings) {
        Learners.start(settings);
        Optional<Model> teacher = RunKnowledge.teacher(settings);
        try {
            Files.createDirectories(folder);
            RunFiles.requireEmpty(folder);
        } catch (IOException e) {
            throw new InvalidRunException("cannot use the folder '" + folder + "': " + Reason.of(e));
        }
        RunFolder run = at(folder);
        // Nothing is written without the lock: of two runs started at once one gets all of the folder, and one none of
        // it.
        return run.locked(warning -> {}, () -> run.begun(settings, teacher));
    }

    private RunFolder begun(TrainingSettings settings, Optional<Model> teacher) {
        try {
            RunFiles.requireEmpty(folder);
            if (teacher.isPresent()) {
                ModelFile.write(teacherFile(), teacher.get());
            }
            RunFiles.write(settingsFile(), settings.toText());
            return this;
        } catch (IOException e) {
            throw new InvalidRunException("cannot use the folder '" + folder + "': " + Reason.of(e));
        }
    }

    /**
     * Opens the folder of a run that was stopped.
     *
     * @param folder its folder
     * @return the run's folder
     * @throws InvalidRunException if there is no run in it, or another process is training in it
     */
    public static RunFolder open(Path folder) {
        RunFolder run = at(folder);
        if (!Files.isRegularFile(run.settingsFile())) {
            throw new InvalidRunException(
                    "there is no run in '" + folder + "' to resume: leave --resume out to start one");
        }
        // What looks like a leftover may be what another process is writing.
        return run.locked(warning -> {}, () -> {
            RunFiles.removeLeftovers(folder);
            return run;
        });
    }

    /**
     * Settings the run was started with.
     *
     * @return the settings
     * @throws InvalidSettingsException if the file has been spoilt
     */
    public TrainingSettings settings() {
        return TrainingSettings.read(settingsFile());
    }

    /**
     * Replaces the settings, when a resumed run is to go on for longer.
     *
     * @param settings new settings
     * @throws InvalidRunException if they cannot be written, or another process is training in the folder
     */
    public void writeSettings(TrainingSettings settings) {
        locked(warning -> {}, () -> {
            try {
                RunFiles.write(settingsFile(), settings.toText());
                return settings;
            } catch (IOException e) {
                throw new InvalidRunException("cannot write '" + settingsFile() + "': " + Reason.of(e));
            }
        });
    }

    /**
     * The networks as they were at the last checkpoint.
     *
     * @return path of the model file
     */
    public Path modelFile() {
        return folder.resolve("net.safetensors");
    }

    /**
     * One line of figures each time strength is evaluated.
     *
     * @return path of the CSV file
     */
    public Path metricsFile() {
        return folder.resolve("metrics.csv");
    }

    /**
     * The opening plays chosen each time strength is evaluated.
     *
     * @return path of the CSV file
     */
    public Path openingsFile() {
        return folder.resolve("openings.csv");
    }

    /**
     * The report for people.
     *
     * @return path of the HTML file
     */
    public Path reportFile() {
        return folder.resolve("report.html");
    }

    /**
     * What the run was made with: a section for its start and one for each time it was resumed.
     *
     * @return path of the manifest
     */
    public Path manifestFile() {
        return folder.resolve("run.txt");
    }

    private Path settingsFile() {
        return folder.resolve("settings.txt");
    }

    void write(Checkpoint checkpoint) throws IOException {
        Path newest = folder.resolve(String.format(Locale.ROOT, "%s%012d%s", PREFIX, checkpoint.round(), SUFFIX));
        CheckpointFile.write(newest, checkpoint);
        List<Path> newestFirst = checkpoints();
        // What lies before this one are damaged files of later rounds, which were gone back from.
        int at = newestFirst.indexOf(newest);
        for (int i = 0; i < newestFirst.size(); i++) {
            if (i < at || i >= at + KEPT) {
                Files.deleteIfExists(newestFirst.get(i));
            }
        }
    }

    private List<Path> checkpoints() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().matches(PREFIX + "\\d{12}\\" + SUFFIX))
                    .sorted(Comparator.reverseOrder())
                    .toList();
        }
    }

    /** The newest checkpoint that is whole, or null if there is none yet; warns of damaged ones. */
    Checkpoint newest(Consumer<String> warn) {
        try {
            List<Path> newestFirst = checkpoints();
            for (Path file : newestFirst) {
                try {
                    return CheckpointFile.read(file);
                } catch (IOException e) {
                    warn.accept("checkpoint '" + file + "' is unusable (" + Reason.of(e)
                            + "): going back to the one before");
                }
            }
            if (!newestFirst.isEmpty()) {
                throw new InvalidRunException(
                        "no checkpoint in '" + folder + "' is usable: start the run anew in another folder");
            }
            return null;
        } catch (IOException e) {
            throw new InvalidRunException("cannot read the folder '" + folder + "': " + Reason.of(e));
        }
    }
}
