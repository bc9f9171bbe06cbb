package org.pipwright.training.cuda;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;
import org.pipwright.training.device.DeviceRequest;
import org.pipwright.training.run.InvalidRunException;
import org.pipwright.training.run.Provenance;
import org.pipwright.training.run.RunFiles;
import org.pipwright.training.run.RunLock;
import org.pipwright.training.settings.InvalidSettingsException;
import org.pipwright.training.settings.SettingValues;

/** Does what was asked of a run, on whatever computes. */
final class TrainerRun {
    private final DeviceRequest request;
    private final String device;
    private final Function<Recipe, Accelerator> accelerators;
    private final LongSupplier nanos;
    private final Consumer<String> say;
    private final BooleanSupplier stop;

    /**
     * A run.
     *
     * @param request what was asked; with a folder
     * @param device what computes, as users name it
     * @param accelerators makes what computes
     * @param nanos tells the time
     * @param say told how it goes
     * @param stop asked whether to stop early
     */
    TrainerRun(
            DeviceRequest request,
            String device,
            Function<Recipe, Accelerator> accelerators,
            LongSupplier nanos,
            Consumer<String> say,
            BooleanSupplier stop) {
        this.request = request;
        this.device = device;
        this.accelerators = accelerators;
        this.nanos = nanos;
        this.say = say;
        this.stop = stop;
    }

    /** The settings of a new run on a device. */
    static SettingValues<CardSetting> fresh(DeviceRequest request, String device) {
        SettingValues<CardSetting> settings = request.preset()
                .map(name -> CardPreset.named(name, device).settings())
                .orElseGet(CardPreset::defaults);
        if (request.settings().isPresent()) {
            settings = settings.read(request.settings().get(), renamed -> {});
        }
        if (request.seed().isPresent()) {
            settings = settings.with(CardSetting.SEED, request.seed().get().toString());
        }
        return limited(settings, request);
    }

    /** The limit that was asked for replaces that of the settings. */
    private static SettingValues<CardSetting> limited(SettingValues<CardSetting> settings, DeviceRequest request) {
        return request.minutes()
                .map(minutes -> settings.with(CardSetting.MINUTES, minutes.toString()))
                .orElse(settings);
    }

    /** Trains; gives the run's model files. */
    List<Path> train() {
        Path path = request.folder().orElseThrow();
        if (!request.resume()) {
            SettingValues<CardSetting> settings = fresh(request, device);
            Recipe recipe = recipe(settings);
            Nets nets = Nets.of(settings, recipe);
            CardFolder folder = CardFolder.create(path);
            RunLock lock = RunLock.take(path, this::warn);
            try {
                folder.begin(settings);
                return train(folder, settings, recipe, nets);
            } finally {
                lock.close();
            }
        }
        return resumed(path);
    }

    private List<Path> resumed(Path path) {
        if (request.preset().isPresent()
                || request.settings().isPresent()
                || request.seed().isPresent()) {
            throw new InvalidSettingsException(
                    "--resume goes on with the settings and the seed of the run: leave those options out");
        }
        CardFolder folder = CardFolder.open(path);
        RunLock lock = RunLock.take(path, this::warn);
        try {
            RunFiles.removeLeftovers(path);
            SettingValues<CardSetting> settings = folder.settings();
            SettingValues<CardSetting> longer = limited(settings, request);
            Recipe recipe = recipe(longer);
            Nets nets = Nets.of(longer, recipe);
            if (!longer.equals(settings)) {
                folder.write(longer);
            }
            return train(folder, longer, recipe, nets);
        } finally {
            lock.close();
        }
    }

    private Recipe recipe(SettingValues<CardSetting> settings) {
        Recipe recipe = Recipe.of(settings);
        if (recipe.processorTime() && !device.equals(ThreadTrainer.DEVICE)) {
            throw new InvalidSettingsException("clock = processor is for --device " + ThreadTrainer.DEVICE
                    + ": a card's work takes no processor time; leave it out");
        }
        return recipe;
    }

    private void warn(String message) {
        say.accept("warning: " + message);
    }

    /** The nets that the settings name, read before anything is written. */
    private record Nets(Optional<Model> copied, Model rival, List<float[]> starts) {
        static Nets of(SettingValues<CardSetting> settings, Recipe recipe) {
            ModelCatalog catalog = ModelCatalog.shipped();
            Model rival = catalog.load(settings.text(CardSetting.RIVAL));
            Optional<Model> copied = recipe.startsGiven()
                    ? Optional.empty()
                    : Optional.of(catalog.load(settings.text(CardSetting.COPIED)));
            java.util.ArrayList<float[]> starts = new java.util.ArrayList<>();
            for (int net = 0; net < recipe.shapes().size(); net++) {
                String file = recipe.starts().get(net);
                starts.add(file == null ? null : start(recipe, net, file, catalog));
            }
            return new Nets(copied, rival, starts);
        }

        private static float[] start(Recipe recipe, int net, String file, ModelCatalog catalog) {
            try {
                return ResidualNets.weights(recipe.shapes().get(net), catalog.load(file));
            } catch (InvalidModelException e) {
                throw new InvalidRunException(
                        "'" + file + "' is not a start for " + recipe.name(net) + ": " + e.getMessage());
            }
        }
    }

    private List<Path> train(CardFolder folder, SettingValues<CardSetting> settings, Recipe recipe, Nets nets) {
        RunBooks books = new RunBooks(folder, settings, recipe, request.page(), say);
        Optional<RunState> newest = books.begin();
        if (newest.isPresent() && books.finished(newest.get())) {
            books.report();
            return folder.modelFiles(recipe);
        }
        Accelerator accelerator = accelerators.apply(recipe);
        RunState from = newest.orElse(new RunState(0, 0, Double.NaN, 0, 0, 0, List.of()));
        Seeds seeds = new Seeds(recipe.seed(), from.seeds());
        RunClock clock =
                new RunClock(recipe.processorTime() ? processorTime(request.threads()) : nanos, from.seconds());
        for (int net = 0; net < recipe.shapes().size(); net++) {
            add(accelerator, recipe.shapes().get(net), nets.starts().get(net), seeds);
            if (newest.isPresent()) {
                accelerator.restore(net, from.nets().get(net));
            }
        }
        books.manifest(facts(accelerator), from.targets());
        Schedule schedule = new Schedule(recipe, clock, from.began());
        Evaluations evaluations = new Evaluations(recipe, accelerator, clock, schedule, nets.rival(), say, stop);
        new LockstepTraining(recipe, accelerator, books, from, seeds, clock, schedule, evaluations, stop)
                .run(nets.copied().orElse(null), request.threads());
        return folder.modelFiles(recipe);
    }

    /** Processor time of this process divided by its threads, in nanoseconds. */
    private static LongSupplier processorTime(int threads) {
        OperatingSystemMXBean system = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
        return () -> system.getProcessCpuTime() / threads;
    }

    private static void add(Accelerator accelerator, ResidualShape shape, float[] start, Seeds seeds) {
        float[] weights = start == null ? shape.initial(new SplittableRandom(seeds.next())) : start;
        accelerator.add(shape, weights);
    }

    private Map<String, String> facts(Accelerator accelerator) {
        Map<String, String> facts = new LinkedHashMap<>();
        request.preset().ifPresent(preset -> facts.put("preset", preset));
        facts.putAll(Provenance.now(request.threads()));
        facts.put("device", accelerator.description());
        return facts;
    }
}
