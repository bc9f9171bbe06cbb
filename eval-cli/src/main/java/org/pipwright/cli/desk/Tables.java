package org.pipwright.cli.desk;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The tables of a desk, by their numbers. */
final class Tables implements AutoCloseable {
    private static final int MAX = 50;

    private final Map<Integer, PlayTable> tables = new TreeMap<>();

    /** Adds a table; gives its number. */
    synchronized int add(PlayTable table) {
        if (tables.size() == MAX) {
            throw new IllegalArgumentException("a desk has at most " + MAX + " tables: end it and start it again");
        }
        tables.put(tables.size() + 1, table);
        return tables.size();
    }

    synchronized Optional<PlayTable> find(int number) {
        return Optional.ofNullable(tables.get(number));
    }

    /** All tables by their numbers. */
    synchronized Map<Integer, PlayTable> all() {
        return new TreeMap<>(tables);
    }

    @Override
    public synchronized void close() {
        tables.values().forEach(PlayTable::close);
    }
}
