package org.pipwright.training.settings;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.pipwright.engine.text.PlainNumber;

/**
 * Which values a setting takes.
 *
 * @param takes whether it takes a value, as written
 * @param words what completes "must be ..."
 */
public record SettingKind(Predicate<String> takes, String words) {
    /** A path or a name, or the word none. */
    public static final SettingKind ANY = new SettingKind(
            text -> !text.isEmpty() && text.chars().noneMatch(Character::isISOControl), "a path or none");

    /** Sizes of layers. */
    public static final SettingKind SIZES =
            new SettingKind(SettingKind::areSizes, "one to four sizes from 1 to 4096, such as 256,32");

    private static boolean areSizes(String text) {
        List<String> sizes = Arrays.asList(text.split(",", -1));
        return sizes.size() <= 4
                && sizes.stream().allMatch(size -> size.matches("[1-9]\\d{0,3}") && Integer.parseInt(size) <= 4096);
    }

    /**
     * Whole numbers.
     *
     * @param least the smallest
     * @param most the largest
     * @return the kind
     */
    public static SettingKind whole(long least, long most) {
        return new SettingKind(text -> isWhole(text, least, most), "a whole number from " + least + " to " + most);
    }

    private static boolean isWhole(String text, long least, long most) {
        try {
            long number = PlainNumber.whole(text);
            return number >= least && number <= most;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    /**
     * Numbers.
     *
     * @param least the smallest
     * @param most the largest
     * @return the kind
     */
    public static SettingKind number(double least, double most) {
        return new SettingKind(
                text -> isNumber(text, least, most),
                String.format(Locale.ROOT, "a number from %.12g to %.12g", least, most)
                        .replaceAll("\\.?0+(?= |$)", ""));
    }

    private static boolean isNumber(String text, double least, double most) {
        try {
            double number = PlainNumber.decimal(text);
            return number >= least && number <= most;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    /**
     * One of some words.
     *
     * @param words the words
     * @return the kind
     */
    public static SettingKind choice(String... words) {
        return choice(List.of(words));
    }

    /**
     * A constant of an enum.
     *
     * @param type the enum, whose constants are written in lower case with hyphens
     * @return the kind
     */
    public static SettingKind choice(Class<? extends Enum<?>> type) {
        return choice(Choices.words(type));
    }

    private static SettingKind choice(List<String> words) {
        return new SettingKind(words::contains, String.join(" or ", words));
    }
}
