package org.pipwright.cli.desk;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.roll.Roll;

/**
 * Reads a setting from an address or a form. What cannot be used stays as usual, and is told where it stands.
 *
 * @param setting what could be read
 * @param errors what could not, by the part of the page where it is told: text, dice, play or stakes
 * @param typed the position that was typed, if it could not be used; else empty
 */
record SettingForm(Setting setting, Map<String, String> errors, String typed) {
    private static final int LONGEST = 2000;

    /**
     * Reads a form.
     *
     * @param field gives the text of a field, or null
     * @return what there is
     */
    static SettingForm parse(UnaryOperator<String> field) {
        Map<String, String> errors = new LinkedHashMap<>();
        UnaryOperator<String> limited = name -> {
            String text = field.apply(name);
            return text == null || text.length() > LONGEST ? null : text;
        };
        Layout layout = read(errors, "text", Setting.START.layout(), () -> layout(limited.apply("position")));
        String typed = limited.apply("text");
        Layout written = typed == null ? layout : read(errors, "text", layout, () -> Layout.parse(typed));
        Optional<Roll> roll = read(errors, "dice", Optional.empty(), () -> roll(limited.apply("roll")));
        PlayedFor playedFor = read(errors, "stakes", PlayedFor.USUAL, () -> PlayedFor.parse(limited));
        Optional<Play> play = read(errors, "play", Optional.empty(), () -> play(limited.apply("play"), written, roll));
        Setting.Look look = new Setting.Look(
                "left".equals(limited.apply("home")),
                !"hidden".equals(limited.apply("pips")),
                Place.parse(limited.apply("pick")));
        Setting.Asking asking = new Setting.Asking(play, ahead(limited.apply("ahead")));
        return new SettingForm(
                new Setting(written, roll, playedFor, asking, look),
                errors,
                errors.containsKey("text") && typed != null ? typed : "");
    }

    private static Optional<Play> play(String text, Layout layout, Optional<Roll> roll) {
        if (text == null
                || text.isBlank()
                || roll.isEmpty()
                || layout.position().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(PlayText.parse(text, layout.position().get(), roll.get()));
        } catch (IllegalPlayException e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    private static int ahead(String text) {
        return text != null && text.matches("[0-" + Opinions.MAX_LOOKAHEAD + "]")
                ? Integer.parseInt(text)
                : Setting.Asking.USUAL.ahead();
    }

    private static Layout layout(String text) {
        return text == null || text.isBlank() ? Setting.START.layout() : Layout.parse(text);
    }

    private static Optional<Roll> roll(String text) {
        return text == null || text.isBlank() ? Optional.empty() : Optional.of(Roll.parse(text));
    }

    private static <T> T read(Map<String, String> errors, String part, T usual, Supplier<T> reader) {
        try {
            return reader.get();
        } catch (IllegalArgumentException e) {
            errors.put(part, e.getMessage());
            return usual;
        }
    }

    /** The same with another setting. */
    SettingForm with(Setting other) {
        return new SettingForm(other, errors, typed);
    }
}
