package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * What a net wins against the yardstick, measured by a duel beforehand.
 *
 * @param name what tables call it
 * @param net a shipped net's name, or a model file
 * @param points points a game
 * @param error standard error of them
 */
record Stand(String name, String net, double points, double error) {
    private static final int COLUMNS = 4;

    /**
     * Stands from a file with a line for each net: name, net, points and error, with tabs between; {@code #} begins a
     * comment.
     *
     * @throws IllegalArgumentException if a line says something else
     */
    static List<Stand> read(Path file) throws IOException {
        List<Stand> stands = new ArrayList<>();
        for (String line : Files.readAllLines(file)) {
            if (!line.isBlank() && !line.startsWith("#")) {
                stands.add(of(line));
            }
        }
        if (stands.isEmpty()) {
            throw new IllegalArgumentException(file + " names no net: a line has name, net, points and error");
        }
        return stands;
    }

    private static Stand of(String line) {
        String[] words = line.split("\t", -1);
        try {
            if (words.length == COLUMNS) {
                return new Stand(words[0], words[1], Double.parseDouble(words[2]), Double.parseDouble(words[3]));
            }
        } catch (NumberFormatException e) {
            // Told below.
        }
        throw new IllegalArgumentException(
                "'" + line + "' should be name, net, points and error, with a tab between each");
    }
}
