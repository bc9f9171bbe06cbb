package org.pipwright.training.settings;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Settings for a purpose, ready to use: changes to the defaults, as a settings file would have them. */
public enum Preset {
    /** A first net, in 20 minutes on two cores. */
    EVENING("""
            minutes = 20
            contact.hidden = 256,32
            race.hidden = 128
            batch = 512
            evaluation.rival = fifth
            evaluation.games = 200
            """),
    /** A net as strong as a night of two cores makes it. */
    OVERNIGHT("""
            minutes = 480
            contact.hidden = 256,32
            race.hidden = 128
            batch = 512
            evaluation.rival = fifth
            evaluation.games = 800
            evaluation.seconds = 300
            """);

    private final String differences;

    Preset(String differences) {
        this.differences = differences;
    }

    /**
     * The preset with some name.
     *
     * @param name as users write it, such as {@code evening}
     * @return the preset
     * @throws InvalidSettingsException if there is none; the message lists them
     */
    public static Preset named(String name) {
        return Arrays.stream(values())
                .filter(preset -> preset.words().equals(name))
                .findAny()
                .orElseThrow(() -> new InvalidSettingsException(
                        "there is no preset '" + name + "': use " + String.join(" or ", names())));
    }

    /**
     * All names.
     *
     * @return as users write them
     */
    public static List<String> names() {
        return Arrays.stream(values()).map(Preset::words).toList();
    }

    /**
     * Its name.
     *
     * @return as users write it
     */
    public String words() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * What it sets.
     *
     * @return the defaults but for what it changes
     */
    public TrainingSettings settings() {
        return TrainingSettings.parse(differences, TrainingSettings.defaults());
    }
}
