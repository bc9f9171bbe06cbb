package org.pipwright.training.settings;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Settings that are a choice: how the constants of an enum are written in a file. */
final class Choices {
    private Choices() {}

    /** As in a file: {@code one-side} for {@code ONE_SIDE}. */
    static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static List<String> words(Class<? extends Enum<?>> type) {
        return Arrays.stream(type.getEnumConstants()).map(Choices::word).toList();
    }

    /** The constant that is written so; there must be one. */
    static <E extends Enum<E>> E of(Class<E> type, String word) {
        return Enum.valueOf(type, word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
