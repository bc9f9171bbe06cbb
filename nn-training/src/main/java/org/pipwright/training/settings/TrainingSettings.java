package org.pipwright.training.settings;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.pipwright.engine.features.FeatureSet;

/** A value for every {@link Setting}. */
public final class TrainingSettings {
    private static final int MOST_BYTES = 1 << 16;

    private final Map<Setting, String> values;

    private TrainingSettings(Map<Setting, String> values) {
        this.values = values;
    }

    /**
     * The defaults.
     *
     * @return settings as an empty file would give them
     */
    public static TrainingSettings defaults() {
        Map<Setting, String> values = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            values.put(setting, setting.byDefault());
        }
        return new TrainingSettings(values);
    }

    /**
     * Reads a file of lines {@code key = value}; the rest of a line after # is a comment.
     *
     * @param file the file
     * @return its settings, defaults where it has none
     * @throws InvalidSettingsException if it is missing, or has an unknown key, a key twice or a value out of range
     */
    public static TrainingSettings read(Path file) {
        return read(file, defaults());
    }

    /**
     * Reads a file as {@link #read(Path)} does.
     *
     * @param file the file
     * @param otherwise what holds where the file says nothing
     * @return its settings
     * @throws InvalidSettingsException as above
     */
    public static TrainingSettings read(Path file, TrainingSettings otherwise) {
        return read(file, otherwise, renamed -> {});
    }

    /**
     * Reads a file as {@link #read(Path)} does.
     *
     * @param file the file
     * @param otherwise what holds where the file says nothing
     * @param renamed told of each setting that the file calls by an old name, in one line that gives the new one
     * @return its settings
     * @throws InvalidSettingsException as above
     */
    public static TrainingSettings read(Path file, TrainingSettings otherwise, Consumer<String> renamed) {
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new InvalidSettingsException("'" + file + "' is too large to be a settings file");
            }
            return parse(
                    Files.readString(file, StandardCharsets.UTF_8),
                    otherwise,
                    line -> renamed.accept("'" + file + "': " + line));
        } catch (IOException e) {
            throw new InvalidSettingsException(
                    "cannot read settings from '" + file + "': train --print-settings writes a file to start from");
        } catch (InvalidSettingsException e) {
            throw new InvalidSettingsException("'" + file + "': " + e.getMessage());
        }
    }

    static TrainingSettings parse(String text, TrainingSettings otherwise) {
        return parse(text, otherwise, renamed -> {});
    }

    static TrainingSettings parse(String text, TrainingSettings otherwise, Consumer<String> renamed) {
        TrainingSettings settings = otherwise;
        Map<Setting, Integer> seen = new EnumMap<>(Setting.class);
        String[] lines = text.split("\\R");
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].replaceFirst("#.*", "").strip();
            if (line.isEmpty()) {
                continue;
            }
            String[] halves = line.split("=", 2);
            String where = "line " + (i + 1) + ": ";
            if (halves.length < 2) {
                throw new InvalidSettingsException(where + "expected 'key = value', found '" + line + "'");
            }
            String key = halves[0].strip();
            Setting setting = named(key, where);
            if (!key.equals(setting.key())) {
                renamed.accept(where + "'" + key + "' is now called " + setting.key());
            }
            Integer before = seen.put(setting, i + 1);
            if (before != null) {
                throw new InvalidSettingsException(where + setting.key() + " was already set in line " + before);
            }
            try {
                settings = settings.with(setting, halves[1].strip());
            } catch (InvalidSettingsException e) {
                throw new InvalidSettingsException(where + e.getMessage());
            }
        }
        return settings;
    }

    private static Setting named(String key, String where) {
        return Arrays.stream(Setting.values())
                .filter(setting -> setting.key().equals(key) || setting.oldKey().equals(Optional.of(key)))
                .findAny()
                .orElseThrow(() -> new InvalidSettingsException(
                        where + "there is no setting '" + key + "': train --print-settings lists them"));
    }

    /**
     * The same settings but one.
     *
     * @param setting which one
     * @param value its new value, as written in a file
     * @return changed settings
     * @throws InvalidSettingsException if the setting does not take the value
     */
    public TrainingSettings with(Setting setting, String value) {
        setting.require(value);
        Map<Setting, String> changed = new EnumMap<>(values);
        changed.put(setting, value);
        return new TrainingSettings(changed);
    }

    /**
     * The settings as a file, each with its comment.
     *
     * @return lines that {@link #read} understands
     */
    public String toText() {
        StringBuilder text = new StringBuilder();
        for (Setting setting : Setting.values()) {
            text.append("# ").append(setting.comment()).append('\n');
            text.append(setting.key()).append(" = ").append(values.get(setting)).append("\n\n");
        }
        return text.toString();
    }

    /**
     * The settings that differ from the defaults.
     *
     * @return one line, such as {@code games=1000000; seed=7}
     */
    public String differences() {
        return Arrays.stream(Setting.values())
                .filter(setting -> !values.get(setting).equals(setting.byDefault()))
                .map(setting -> setting.key() + "=" + values.get(setting))
                .collect(Collectors.joining("; "));
    }

    /**
     * A setting as written.
     *
     * @param setting which one
     * @return its value
     */
    public String text(Setting setting) {
        return values.get(setting);
    }

    /**
     * Seed of everything random.
     *
     * @return any number
     */
    public long seed() {
        return whole(Setting.SEED);
    }

    /**
     * When the run ends.
     *
     * @return its limits
     */
    public Limits limits() {
        return new Limits(whole(Setting.GAMES), number(Setting.MINUTES));
    }

    /**
     * How games are played.
     *
     * @return settings of games
     */
    public GameSettings games() {
        return new GameSettings(
                size(Setting.CHECKERS),
                Choices.of(OpeningRoll.class, text(Setting.OPENING)),
                number(Setting.RANDOM_OPENINGS),
                Choices.of(GameEnd.class, text(Setting.ENDS)),
                size(Setting.MAX_TURNS));
    }

    /**
     * What samples should give.
     *
     * @return settings of targets
     */
    public TargetSettings targets() {
        return new TargetSettings(
                Choices.of(TargetKind.class, text(Setting.TARGETS)),
                file(Setting.TARGET_NET),
                size(Setting.ROLLOUT_GAMES),
                size(Setting.ROLLOUT_TRUNCATION));
    }

    /**
     * Which positions become samples.
     *
     * @return settings of samples
     */
    public SampleSettings samples() {
        return new SampleSettings(
                Choices.of(SampledPositions.class, text(Setting.SAMPLES)), number(Setting.SAMPLE_SHARE));
    }

    /**
     * The shape of the nets, and what they begin with.
     *
     * @return settings of networks
     */
    public NetworkSettings networks() {
        return new NetworkSettings(
                file(Setting.START_NET),
                FeatureSet.named(text(Setting.CONTACT_FEATURES)),
                sizes(Setting.CONTACT_HIDDEN),
                sizes(Setting.RACE_HIDDEN));
    }

    /**
     * How the networks learn.
     *
     * @return settings of learning
     */
    public LearningSettings learning() {
        return new LearningSettings(
                Choices.of(LearnerKind.class, text(Setting.LEARNER)),
                size(Setting.ROUND),
                size(Setting.BATCH),
                size(Setting.EPOCHS),
                whole(Setting.AVERAGE),
                fall(Setting.LAMBDA_FIRST, Setting.LAMBDA_LAST),
                fall(Setting.RATE_FIRST, Setting.RATE_LAST));
    }

    /**
     * How strength is evaluated.
     *
     * @return settings of evaluation
     */
    public EvaluationSettings evaluation() {
        return new EvaluationSettings(size(Setting.EVALUATION_GAMES), number(Setting.EVALUATION_SECONDS));
    }

    /**
     * Time between two checkpoints.
     *
     * @return in seconds
     */
    public double checkpointSeconds() {
        return number(Setting.CHECKPOINT_SECONDS);
    }

    private Fall fall(Setting first, Setting last) {
        return new Fall(number(first), number(last), number(Setting.CONSTANT_SHARE));
    }

    private Optional<Path> file(Setting setting) {
        return Optional.of(text(setting)).filter(text -> !text.equals("none")).map(Path::of);
    }

    private long whole(Setting setting) {
        return Long.parseLong(text(setting));
    }

    private int size(Setting setting) {
        return Integer.parseInt(text(setting));
    }

    private double number(Setting setting) {
        return Double.parseDouble(text(setting));
    }

    private List<Integer> sizes(Setting setting) {
        return Arrays.stream(text(setting).split(",")).map(Integer::valueOf).toList();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TrainingSettings settings && values.equals(settings.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.toString();
    }
}
