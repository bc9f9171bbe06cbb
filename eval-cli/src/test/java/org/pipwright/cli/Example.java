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

    /** The README and the pages it leads to, but the lesson, which has a test of its own. */
    private static final List<String> DOCUMENTS = List.of(
            "README.md",
            "docs/rank.md",
            "docs/deeper.md",
            "docs/cube.md",
            "docs/train.md",
            "docs/compare.md",
            "docs/records.md",
            "docs/exercises.md",
            "docs/library.md");

    private Example() {}

    static List<Path> documents() {
        return DOCUMENTS.stream().map(name -> Path.of("..", name)).collect(Collectors.toList());
    }

    /** What all documents say, one after the other. */
    static String documentation() throws IOException {
        StringBuilder text = new StringBuilder();
        for (Path document : documents()) {
            text.append(Files.readString(document)).append('\n');
        }
        return text.toString();
    }

    /** The blocks of a language in all documents. */
    static List<String> blocks(String language) throws IOException {
        return blocksOf(documentation(), language);
    }

    /** The blocks of a language in a document, each with the end of its last line; the language may be empty. */
    static List<String> blocks(Path document, String language) throws IOException {
        return blocksOf(Files.readString(document), language);
    }

    private static List<String> blocksOf(String text, String language) {
        return BLOCK.matcher(text)
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
