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
     * Adds a table.
     *
     * @param laid makes it, given its number; it may take its time, since nobody waits for it here
     * @return its number
     */
    int add(IntFunction<PlayTable> laid) {
        int number = next();
        PlayTable table = laid.apply(number);
        synchronized (this) {
            tables.put(number, table);
        }
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
