package org.pipwright.training.settings;

import java.util.Optional;
import org.pipwright.engine.text.Excerpt;

/**
 * All facts about a setting.
 *
 * @param key name in the settings file, such as {@code rate.first}
 * @param oldKey what files of earlier versions call it; empty if it never had another name
 * @param byDefault value where the file does not give one, as it would be written
 * @param kind which values it takes
 * @param comment what it does, in one or more sentences for people
 */
public record SettingFacts(String key, Optional<String> oldKey, String byDefault, SettingKind kind, String comment) {
    /**
     * Of a setting that never had another name.
     *
     * @param key name in the settings file
     * @param byDefault value where the file does not give one
     * @param kind which values it takes
     * @param comment what it does
     */
    public SettingFacts(String key, String byDefault, SettingKind kind, String comment) {
        this(key, Optional.empty(), byDefault, kind, comment);
    }

    /**
     * Checks a value.
     *
     * @param value as written
     * @throws InvalidSettingsException if the setting does not take it
     */
    public void require(String value) {
        if (!kind.takes().test(value)) {
            throw new InvalidSettingsException(key + " must be " + kind.words() + ", not '" + Excerpt.of(value) + "'");
        }
    }
}
