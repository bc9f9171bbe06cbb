package org.pipwright.cli.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Pages of help about what several commands share. */
final class Topics {
    /** Their names, each with a resource of that name. */
    static final List<String> NAMES = List.of("notation", "equity", "cube", "match", "training");

    private static final int USUAL_WIDTH = 90;

    private Topics() {}

    /**
     * Prints a topic. In the resource a paragraph is one line, which is broken to fit; lines that begin with spaces stay as
     * they are.
     *
     * @param columns characters a line, 0 if that does not matter
     */
    static void print(String name, int columns, PrintWriter out) {
        int width = columns > 0 ? Math.min(columns, USUAL_WIDTH) : USUAL_WIDTH;
        for (String line : text(name).split("\n")) {
            out.println(line.startsWith(" ") ? line : wrapped(line, width));
        }
    }

    private static String text(String name) {
        try (InputStream in = Topics.class.getResourceAsStream("/org/pipwright/cli/topics/" + name + ".txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("a resource cannot be read", e);
        }
    }

    private static String wrapped(String paragraph, int width) {
        StringBuilder lines = new StringBuilder();
        int start = 0;
        for (String word : paragraph.split(" ")) {
            boolean fits = lines.length() - start + 1 + word.length() <= width;
            if (lines.length() > 0) {
                lines.append(fits ? " " : System.lineSeparator());
                start = fits ? start : lines.length();
            }
            lines.append(word);
        }
        return lines.toString();
    }
}
