package org.pipwright.bench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Command-line options of the form {@code --name value}, with flags that take no value. */
public final class Options {
    private final Map<String, String> values = new LinkedHashMap<>();

    /**
     * Reads the options.
     *
     * @param args the words of the command line
     * @param names options that take a value
     * @param flags options that take none
     * @throws IllegalArgumentException if a word is not one of these; one line says which are
     */
    public Options(List<String> args, Set<String> names, Set<String> flags) {
        for (int i = 0; i < args.size(); i++) {
            String word = args.get(i);
            if (flags.contains(word)) {
                values.put(word, "");
            } else if (!names.contains(word)) {
                throw new IllegalArgumentException("'" + word + "' is not known: use "
                        + String.join(" ", names.stream().sorted().toList())
                        + String.join(
                                "",
                                flags.stream().sorted().map(flag -> " " + flag).toList()));
            } else if (i + 1 == args.size()) {
                throw new IllegalArgumentException(word + " needs a value");
            } else {
                values.put(word, args.get(++i));
            }
        }
    }

    /** Whether a flag is there. */
    public boolean has(String flag) {
        return values.containsKey(flag);
    }

    /** The value of an option. */
    public Optional<String> text(String name) {
        return Optional.ofNullable(values.get(name));
    }

    /** The value of an option that has to be there. */
    public String required(String name) {
        return text(name).orElseThrow(() -> new IllegalArgumentException("say " + name));
    }

    /** The value of an option as a whole number in a range, or what to take without it. */
    public int number(String name, int otherwise, int least, int most) {
        String text = values.get(name);
        if (text == null) {
            return otherwise;
        }
        if (!text.matches("\\d{1,9}") || Integer.parseInt(text) < least || Integer.parseInt(text) > most) {
            throw new IllegalArgumentException(
                    name + " takes a whole number from " + least + " to " + most + ", not '" + text + "'");
        }
        return Integer.parseInt(text);
    }
}
