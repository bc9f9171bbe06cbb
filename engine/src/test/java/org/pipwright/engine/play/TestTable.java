package org.pipwright.engine.play;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;

/** Reads tab-separated tables of the test resources. */
final class TestTable {
    private TestTable() {}

    /** The rows of a table beside a class, without those that start with #. */
    static List<String> rows(Class<?> beside, String name) throws IOException {
        try (BufferedReader reader =
                new BufferedReader(new InputStreamReader(beside.getResourceAsStream(name), StandardCharsets.UTF_8))) {
            return reader.lines().filter(line -> !line.startsWith("#")).collect(Collectors.toList());
        }
    }
}
