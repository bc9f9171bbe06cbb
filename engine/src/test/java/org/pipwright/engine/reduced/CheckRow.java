package org.pipwright.engine.reduced;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.position.Position;

/** Rows of the check tables beside this class. */
final class CheckRow {
    private CheckRow() {}

    /** The fields of every row but comments and column names. */
    static List<String[]> rows(String name) {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(CheckRow.class.getResourceAsStream(name), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split("\t"))
                    .collect(Collectors.toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A position from the places of both sides' checkers. */
    static Position position(String mine, String theirs) {
        return Position.of(counts(mine), counts(theirs));
    }

    private static int[] counts(String places) {
        int[] counts = new int[26];
        for (String place : places.split(",")) {
            counts[Integer.parseInt(place)]++;
        }
        return counts;
    }
}
