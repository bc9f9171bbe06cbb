package org.pipwright.engine.bearoff;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** Reads the tables of check values; see the README beside them. */
final class CheckRows {
    private CheckRows() {}

    /** The rows of a table as fields, without comments and the header. */
    static List<List<String>> of(String name) throws IOException {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(CheckRows.class.getResourceAsStream(name), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> List.of(line.split("\t")))
                    .collect(Collectors.toList());
        }
    }

    /** The planes of a side that is given as counts on points 1, 2, ... */
    static int[] side(String counts) {
        int[] planes = new int[Planes.SIDE];
        int point = 1;
        for (String count : counts.split(",")) {
            for (int n = Integer.parseInt(count); n > 0; n--) {
                Planes.add(planes, 0, point);
            }
            point++;
        }
        return planes;
    }

    /** A position of the full game from the counts of both sides. */
    static Position position(String onRoll, String opponent) {
        return Position.of(counts(onRoll), counts(opponent));
    }

    private static int[] counts(String text) {
        int[] given = numbers(text);
        int[] counts = new int[Planes.PLACES];
        System.arraycopy(given, 0, counts, 1, given.length);
        counts[0] = Position.FULL - Arrays.stream(given).sum();
        return counts;
    }

    private static int[] numbers(String text) {
        return Arrays.stream(text.split(",")).mapToInt(Integer::parseInt).toArray();
    }
}
