package org.pipwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What the documents show of commands. */
final class Example {
    private static final Pattern BLOCK = Pattern.compile("```(\\w*)\n(.*?)```", Pattern.DOTALL);

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|\\S+");

    private Example() {}

    /** The blocks of a language in a document, each with the end of its last line; the language may be empty. */
    static List<String> blocks(Path document, String language) throws IOException {
        return BLOCK.matcher(Files.readString(document))
                .results()
                .filter(block -> block.group(1).equals(language))
                .map(block -> block.group(2))
                .collect(Collectors.toList());
    }

    /** Words of a shell, of which double quotes hold some together. */
    static String[] words(String line) {
        return WORD.matcher(line)
                .results()
                .map(word -> word.group(1) == null ? word.group() : word.group(1))
                .toArray(String[]::new);
    }

    /** Words, plays and whole numbers: the last digits of what a net says may differ with the processor. */
    static String numberless(String text) {
        return text.replaceAll("[+-]?[0-9]+\\.[0-9]+", "#").replaceAll(" +", " ");
    }
}
