package org.pipwright.engine.matchtable;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;

/** Reads tab-separated tables of the test resources, without comments and column names. */
final class TestTable {
    private TestTable() {}

    static List<String[]> rows(String name) throws IOException {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(TestTable.class.getResourceAsStream(name), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split("\t"))
                    .collect(Collectors.toList());
        }
    }
}
