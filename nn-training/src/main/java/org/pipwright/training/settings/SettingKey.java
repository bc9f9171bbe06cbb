package org.pipwright.training.settings;

/** A setting of some kind of run. */
public interface SettingKey {
    /**
     * All facts about it.
     *
     * @return key, default, values and comment
     */
    SettingFacts facts();

    /**
     * Name in the settings file.
     *
     * @return for instance {@code rate.first}
     */
    default String key() {
        return facts().key();
    }
}
