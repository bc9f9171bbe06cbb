package org.pipwright.training.settings;

import java.util.Optional;

/** A setting: its key in the file, what it does, its default and which values it takes. */
public interface SettingKey {
    /**
     * Name in the settings file.
     *
     * @return for instance {@code rate.first}
     */
    String key();

    /**
     * What files of earlier versions call it.
     *
     * @return a name that is still read; empty if it never had another
     */
    default Optional<String> oldKey() {
        return Optional.empty();
    }

    /**
     * Value where the file does not give one.
     *
     * @return as it would be written
     */
    String byDefault();

    /**
     * Which values it takes.
     *
     * @return the kind of its values
     */
    SettingKind kind();

    /**
     * What it does.
     *
     * @return one or more sentences for people
     */
    String comment();

    /**
     * Checks a value.
     *
     * @param value as written
     * @throws InvalidSettingsException if the setting does not take it
     */
    default void require(String value) {
        if (!kind().takes().test(value)) {
            throw new InvalidSettingsException(key() + " must be " + kind().words() + ", not '" + value + "'");
        }
    }
}
