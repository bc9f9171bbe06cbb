package org.pipwright.training.settings;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.files.WholeFile;
import org.pipwright.engine.text.Excerpt;

/**
 * A value for every setting of an enum, and how files of lines {@code key = value} are read and written. Immutable.
 *
 * @param <S> the settings
 */
public final class SettingValues<S extends Enum<S> & SettingKey> {
    private static final int MAX_BYTES = 1 << 16;

    private final Class<S> type;
    private final String lister;
    private final Map<S, String> values;

    private SettingValues(Class<S> type, String lister, Map<S, String> values) {
        this.type = type;
        this.lister = lister;
        this.values = values;
    }

    /**
     * The defaults.
     *
     * @param <S> the settings
     * @param type their enum
     * @param lister the command that prints them, which error lines name
     * @return values as an empty file would give them
     */
    public static <S extends Enum<S> & SettingKey> SettingValues<S> defaults(Class<S> type, String lister) {
        Map<S, String> values = new EnumMap<>(type);
        for (S setting : type.getEnumConstants()) {
            values.put(setting, setting.facts().byDefault());
        }
        return new SettingValues<>(type, lister, values);
    }

    /**
     * Reads a file of lines {@code key = value}; the rest of a line after # is a comment.
     *
     * @param file the file
     * @param renamed told of each setting that the file calls by an old name, in one line that gives the new one
     * @return its values; these here where it has none
     * @throws InvalidSettingsException if it is missing, or has an unknown key, a key twice or a value out of range
     */
    public SettingValues<S> read(Path file, Consumer<String> renamed) {
        try {
            return parse(WholeFile.text(file, MAX_BYTES), line -> renamed.accept("'" + file + "': " + line));
        } catch (NoSuchFileException | AccessDeniedException e) {
            throw new InvalidSettingsException(
                    "cannot read settings from '" + file + "': " + lister + " writes a file to start from");
        } catch (CharacterCodingException e) {
            throw new InvalidSettingsException(
                    "'" + file + "' is not text in UTF-8: " + lister + " writes a file to start from");
        } catch (IOException e) {
            throw new InvalidSettingsException("'" + file + "' is not a settings file (" + Reason.of(e) + "): " + lister
                    + " writes one to start from");
        } catch (InvalidSettingsException e) {
            throw new InvalidSettingsException("'" + file + "': " + e.getMessage());
        }
    }

    /**
     * Reads the text of such a file.
     *
     * @param text its lines
     * @param renamed told of old names, as above
     * @return its values; these here where it has none
     * @throws InvalidSettingsException as for a file
     */
    public SettingValues<S> parse(String text, Consumer<String> renamed) {
        SettingValues<S> settings = this;
        Map<S, Integer> seen = new EnumMap<>(type);
        String[] lines = text.split("\\R");
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].replaceFirst("#.*", "").strip();
            if (line.isEmpty()) {
                continue;
            }
            String[] halves = line.split("=", 2);
            String where = "line " + (i + 1) + ": ";
            if (halves.length < 2) {
                throw new InvalidSettingsException(where + "expected 'key = value', found '" + Excerpt.of(line) + "'");
            }
            String key = halves[0].strip();
            S setting = named(key, where);
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

    private S named(String key, String where) {
        return Arrays.stream(type.getEnumConstants())
                .filter(setting ->
                        setting.key().equals(key) || setting.facts().oldKey().equals(Optional.of(key)))
                .findAny()
                .orElseThrow(() -> new InvalidSettingsException(
                        where + "there is no setting '" + Excerpt.of(key) + "': " + lister + " lists them"));
    }

    /**
     * The same values but one.
     *
     * @param setting which one
     * @param value its new value, as written in a file
     * @return changed values
     * @throws InvalidSettingsException if the setting does not take the value
     */
    public SettingValues<S> with(S setting, String value) {
        setting.facts().require(value);
        Map<S, String> changed = new EnumMap<>(values);
        changed.put(setting, value);
        return new SettingValues<>(type, lister, changed);
    }

    /**
     * The settings as a file, each with its comment.
     *
     * @return lines that {@link #read} understands
     */
    public String toText() {
        StringBuilder text = new StringBuilder();
        values.forEach((setting, value) -> {
            text.append("# ").append(setting.facts().comment()).append('\n');
            text.append(setting.key()).append(" = ").append(value).append("\n\n");
        });
        return text.toString();
    }

    /**
     * The settings that differ from the defaults.
     *
     * @return one line, such as {@code games=1000000; seed=7}
     */
    public String differences() {
        return values.entrySet().stream()
                .filter(entry -> !entry.getValue().equals(entry.getKey().facts().byDefault()))
                .map(entry -> entry.getKey().key() + "=" + entry.getValue())
                .collect(Collectors.joining("; "));
    }

    /**
     * A setting as written.
     *
     * @param setting which one
     * @return its value
     */
    public String text(S setting) {
        return values.get(setting);
    }

    /**
     * A whole number.
     *
     * @param setting one that takes whole numbers
     * @return its value
     */
    public long whole(S setting) {
        return Long.parseLong(values.get(setting));
    }

    /**
     * A number.
     *
     * @param setting one that takes numbers
     * @return its value
     */
    public double number(S setting) {
        return Double.parseDouble(values.get(setting));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SettingValues<?> settings && values.equals(settings.values);
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
