package org.pipwright.training.cuda;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.pipwright.engine.files.Reason;
import org.pipwright.training.run.InvalidRunException;
import org.pipwright.training.run.RunFiles;
import org.pipwright.training.settings.SettingValues;

/** The folder of a run on a card and the files in it. Whoever uses it holds the run's lock. */
final class CardFolder {
    private static final String PREFIX = "checkpoint-";
    private static final String SUFFIX = ".state";

    private final Path folder;

    private CardFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * Makes a folder that a run can begin in.
     *
     * @throws InvalidRunException if it is in use or cannot be made
     */
    static CardFolder create(Path folder) {
        try {
            Files.createDirectories(folder);
            RunFiles.requireEmpty(folder);
            return new CardFolder(folder);
        } catch (IOException e) {
            throw new InvalidRunException("cannot use the folder '" + folder + "': " + Reason.of(e));
        }
    }

    /**
     * Opens the folder of a run that was stopped.
     *
     * @throws InvalidRunException if there is no run in it
     */
    static CardFolder open(Path folder) {
        CardFolder run = new CardFolder(folder);
        if (!Files.isRegularFile(run.settingsFile())) {
            throw new InvalidRunException(
                    "there is no run in '" + folder + "' to resume: leave --resume out to start one");
        }
        return run;
    }

    /** Begins a run, unless another process has begun one since. */
    void begin(SettingValues<CardSetting> settings) {
        try {
            RunFiles.requireEmpty(folder);
        } catch (IOException e) {
            throw new InvalidRunException("cannot use the folder '" + folder + "': " + Reason.of(e));
        }
        write(settingsFile(), settings.toText());
    }

    /** Settings the run was started with. */
    SettingValues<CardSetting> settings() {
        return CardPreset.defaults().read(settingsFile(), renamed -> {});
    }

    void write(SettingValues<CardSetting> settings) {
        write(settingsFile(), settings.toText());
    }

    private static void write(Path file, String text) {
        try {
            RunFiles.write(file, text);
        } catch (IOException e) {
            throw new InvalidRunException("cannot write '" + file + "': " + Reason.of(e));
        }
    }

    private Path settingsFile() {
        return folder.resolve("settings.txt");
    }

    Path manifestFile() {
        return folder.resolve("run.txt");
    }

    Path figuresFile() {
        return folder.resolve("metrics.csv");
    }

    Path openingsFile() {
        return folder.resolve("openings.csv");
    }

    Path reportFile() {
        return folder.resolve("report.html");
    }

    /** Where a network is kept: the deep one as {@code net.safetensors}, others by name. */
    Path modelFile(Recipe recipe, int net) {
        return folder.resolve(net == Recipe.DEEP ? "net.safetensors" : "net-" + recipe.name(net) + ".safetensors");
    }

    /** All model files, those that are used in play first. */
    List<Path> modelFiles(Recipe recipe) {
        List<Path> files = new ArrayList<>();
        files.add(modelFile(recipe, Recipe.DEEP));
        for (int net = Recipe.QUICK + 1; net < recipe.shapes().size(); net++) {
            files.add(modelFile(recipe, net));
        }
        files.add(modelFile(recipe, Recipe.QUICK));
        return files;
    }

    /** Writes a checkpoint and removes all but the newest. */
    void write(RunState state, int kept) throws IOException {
        Path newest = folder.resolve(String.format(Locale.ROOT, "%s%015d%s", PREFIX, state.targets(), SUFFIX));
        StateFile.write(newest, state);
        List<Path> newestFirst = checkpoints();
        // What lies before this one are damaged files of later times, which were gone back from.
        int at = newestFirst.indexOf(newest);
        for (int i = 0; i < newestFirst.size(); i++) {
            if (i < at || i >= at + kept) {
                Files.deleteIfExists(newestFirst.get(i));
            }
        }
    }

    private List<Path> checkpoints() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().matches(PREFIX + "\\d{15}\\" + SUFFIX))
                    .sorted(Comparator.reverseOrder())
                    .toList();
        }
    }

    /** The newest checkpoint that is whole; empty if there is none yet. Warns of damaged ones. */
    Optional<RunState> newest(List<ResidualShape> shapes, Consumer<String> say) {
        try {
            List<Path> newestFirst = checkpoints();
            for (Path file : newestFirst) {
                try {
                    return Optional.of(StateFile.read(file, shapes));
                } catch (IOException e) {
                    say.accept("warning: checkpoint '" + file + "' is unusable (" + Reason.of(e)
                            + "): going back to the one before");
                }
            }
            if (!newestFirst.isEmpty()) {
                throw new InvalidRunException(
                        "no checkpoint in '" + folder + "' is usable: start the run anew in another folder");
            }
            return Optional.empty();
        } catch (IOException e) {
            throw new InvalidRunException("cannot read the folder '" + folder + "': " + Reason.of(e));
        }
    }
}
