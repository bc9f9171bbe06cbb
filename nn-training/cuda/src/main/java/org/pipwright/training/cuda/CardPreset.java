package org.pipwright.training.cuda;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.pipwright.training.settings.InvalidSettingsException;
import org.pipwright.training.settings.SettingValues;

/** Recipes that were measured, ready to use. */
enum CardPreset {
    /**
     * A strong net and two smaller ones. On one H100 152.7 million lessons, 25 million of them copied; points a game over {@code fifth} without
     * lookahead: 1024x6 +0.0603, 768x4 +0.0575, 256x2 +0.0212, each ± 0.0028.
     */
    DEEP(CudaTrainer.DEVICE, """
            minutes = 19
            deep = 1024x6
            pupils = 768x4,256x2
            """),
    /**
     * Half the time for a smaller net. On one H100 135.8 million lessons, 27 million of them copied; 768x4 +0.0547, 384x3 +0.0438, 256x2 +0.0218, each
     * ± 0.0028.
     */
    SLIM(CudaTrainer.DEVICE, """
            minutes = 9.6
            deep = 768x4
            pupils = 384x3,256x2
            """),
    /** Twenty minutes of two cores, for a net that is level with {@code fifth}: +0.0047 ± 0.0027 points a game. */
    EVENING(ThreadTrainer.DEVICE, """
            minutes = 20
            deep = 256x3
            quick = 128x1
            copy.seconds = 300
            lanes = 1
            games = 256
            batch = 512
            memory = 300000
            rival = fifth
            evaluation.seconds = 240
            evaluation.pairs = 512
            final.pairs = 5000
            """),
    /** Eight hours of two cores, for a net that wins 0.0428 ± 0.0027 points a game from {@code fifth}. */
    OVERNIGHT(ThreadTrainer.DEVICE, """
            minutes = 480
            deep = 384x3
            quick = 128x1
            copy.seconds = 600
            lanes = 1
            games = 512
            uses = 8
            batch = 2048
            rival = fifth
            evaluation.seconds = 1800
            evaluation.pairs = 2048
            final.pairs = 10000
            checkpoint.seconds = 300
            """);

    private final String device;
    private final String differences;

    CardPreset(String device, String differences) {
        this.device = device;
        this.differences = differences;
    }

    static SettingValues<CardSetting> defaults() {
        return SettingValues.defaults(CardSetting.class, "train --device cuda --print-settings");
    }

    /** What a text changes of the defaults. */
    static SettingValues<CardSetting> parse(String text) {
        return defaults().parse(text, renamed -> {});
    }

    static List<String> names(String device) {
        return Arrays.stream(values())
                .filter(preset -> preset.device.equals(device))
                .map(CardPreset::words)
                .toList();
    }

    String device() {
        return device;
    }

    String words() {
        return name().toLowerCase(Locale.ROOT);
    }

    SettingValues<CardSetting> settings() {
        return parse(differences);
    }

    static CardPreset named(String name, String device) {
        return Arrays.stream(values())
                .filter(preset -> preset.device.equals(device) && preset.words().equals(name))
                .findAny()
                .orElseThrow(() -> new InvalidSettingsException("there is no preset '" + name + "' for --device "
                        + device + ": use " + String.join(" or ", names(device))));
    }
}
