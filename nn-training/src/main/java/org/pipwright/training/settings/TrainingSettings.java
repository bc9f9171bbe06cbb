package org.pipwright.training.settings;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

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
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new InvalidSettingsException("'" + file + "' is too large to be a settings file");
            }
            return parse(Files.readString(file, StandardCharsets.UTF_8), otherwise);
        } catch (IOException e) {
            throw new InvalidSettingsException(
                    "cannot read settings from '" + file + "': train --print-settings writes a file to start from");
        } catch (InvalidSettingsException e) {
            throw new InvalidSettingsException("'" + file + "': " + e.getMessage());
        }
    }

    static TrainingSettings parse(String text, TrainingSettings otherwise) {
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
            Setting setting = named(halves[0].strip(), where);
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
                .filter(setting -> setting.key().equals(key))
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
     * A whole number.
     *
     * @param setting one that takes whole numbers
     * @return its value
     */
    public long whole(Setting setting) {
        return Long.parseLong(values.get(setting));
    }

    /**
     * A number.
     *
     * @param setting one that takes numbers
     * @return its value
     */
    public double number(Setting setting) {
        return Double.parseDouble(values.get(setting));
    }

    /**
     * Sizes of layers.
     *
     * @param setting one that takes sizes
     * @return its value
     */
    public List<Integer> sizes(Setting setting) {
        return Arrays.stream(values.get(setting).split(","))
                .map(Integer::valueOf)
                .toList();
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
