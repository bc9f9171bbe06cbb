package org.pipwright.cli.desk;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntFunction;

/** The tables of a desk, by their numbers. */
final class Tables {
    private static final int MAX = 50;

    private final Map<Integer, PlayTable> tables = new TreeMap<>();
    private int last;

    /**
     * Adds a table, unless there is one with the same record.
     *
     * @param laid makes it, given its number; it may take its time, since nobody waits for it here
     * @return the number of the table with that record
     */
    int add(IntFunction<PlayTable> laid) {
        int number = next();
        PlayTable table = laid.apply(number);
        return put(number, table);
    }

    private synchronized int put(int number, PlayTable table) {
        for (Map.Entry<Integer, PlayTable> each : tables.entrySet()) {
            if (each.getValue().file().equals(table.file())) {
                return each.getKey();
            }
        }
        tables.put(number, table);
        return number;
    }

    private synchronized int next() {
        if (tables.size() >= MAX) {
            throw new IllegalArgumentException("a desk has at most " + MAX + " tables: end it and start it again");
        }
        return ++last;
    }

    synchronized Optional<PlayTable> find(int number) {
        return Optional.ofNullable(tables.get(number));
    }

    /** All tables by their numbers. */
    synchronized Map<Integer, PlayTable> all() {
        return new TreeMap<>(tables);
    }
}
