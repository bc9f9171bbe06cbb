package org.pipwright.bench.start;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What printed sources say of a figure.
 *
 * @param figure name of the figure
 * @param text what they say
 * @param source where
 */
record Printed(String figure, String text, String source) {
    private static final String TABLE = "printed.tsv";

    /** All of them, by figure. */
    static Map<String, Printed> all() {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(Printed.class.getResourceAsStream(TABLE), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split("\t"))
                    .map(fields -> new Printed(fields[0], fields[1], fields[2]))
                    .collect(Collectors.toMap(Printed::figure, printed -> printed));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + TABLE + " from the class path", e);
        }
    }
}
