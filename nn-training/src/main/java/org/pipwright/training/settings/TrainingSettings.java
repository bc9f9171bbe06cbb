package org.pipwright.training.settings;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.pipwright.engine.features.FeatureSet;

/** A value for every {@link Setting}. */
public final class TrainingSettings {
    private static final TrainingSettings DEFAULTS =
            new TrainingSettings(SettingValues.defaults(Setting.class, "train --print-settings"));

    private final SettingValues<Setting> values;

    private TrainingSettings(SettingValues<Setting> values) {
        this.values = values;
    }

    /**
     * The defaults.
     *
     * @return settings as an empty file would give them
     */
    public static TrainingSettings defaults() {
        return DEFAULTS;
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
        return new TrainingSettings(otherwise.values.read(file, renamed));
    }

    static TrainingSettings parse(String text, TrainingSettings otherwise) {
        return parse(text, otherwise, renamed -> {});
    }

    static TrainingSettings parse(String text, TrainingSettings otherwise, Consumer<String> renamed) {
        return new TrainingSettings(otherwise.values.parse(text, renamed));
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
        return new TrainingSettings(values.with(setting, value));
    }

    /**
     * The settings as a file, each with its comment.
     *
     * @return lines that {@link #read} understands
     */
    public String toText() {
        return values.toText();
    }

    /**
     * The settings that differ from the defaults.
     *
     * @return one line, such as {@code games=1000000; seed=7}
     */
    public String differences() {
        return values.differences();
    }

    /**
     * A setting as written.
     *
     * @param setting which one
     * @return its value
     */
    public String text(Setting setting) {
        return values.text(setting);
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
                size(Setting.STALENESS),
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
        // What a net says of reduced games is not worth much.
        String rival = games().checkers() == 15 ? text(Setting.EVALUATION_RIVAL) : EvaluationSettings.PIPS;
        return new EvaluationSettings(rival, size(Setting.EVALUATION_GAMES), number(Setting.EVALUATION_SECONDS));
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
        return values.whole(setting);
    }

    private int size(Setting setting) {
        return Integer.parseInt(text(setting));
    }

    private double number(Setting setting) {
        return values.number(setting);
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
