package org.pipwright.bench.cluster;

import java.io.IOException;
import java.io.ObjectOutputStream;
import java.io.OutputStream;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.parallel.Workforce;

/**
 * A workforce that counts what goes to the others and comes back in the first order, which is not timed since counting takes
 * a while, and how long they were waited for in each.
 */
final class Metered implements Workforce {
    private final Workforce workers;
    long sharedBytes;
    long resultBytes;
    private final List<Double> seconds = new ArrayList<>();

    Metered(Workforce workers) {
        this.workers = workers;
    }

    /** How long the last so many orders took, on average. */
    double secondsOfLast(int orders) {
        return seconds.subList(seconds.size() - orders, seconds.size()).stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElseThrow();
    }

    private boolean counting() {
        return seconds.isEmpty();
    }

    @Override
    public int size() {
        return workers.size();
    }

    @Override
    public <V extends Serializable> Shared<V> share(V value) {
        sharedBytes += counting() ? bytes(value) : 0;
        return workers.share(value);
    }

    @Override
    public <T extends Serializable, R extends Serializable> void inOrder(
            Trade<T, R> trade, Iterator<T> tasks, Predicate<R> taken, BooleanSupplier stopped) {
        long began = System.nanoTime();
        workers.inOrder(
                trade,
                tasks,
                result -> {
                    resultBytes += counting() ? bytes(result) : 0;
                    return taken.test(result);
                },
                stopped);
        seconds.add((System.nanoTime() - began) / 1e9);
    }

    /** As they are written for another machine, before Spark compresses them. */
    private static long bytes(Serializable value) {
        Counting counting = new Counting();
        try (ObjectOutputStream out = new ObjectOutputStream(counting)) {
            out.writeObject(value);
        } catch (IOException e) {
            throw new UncheckedIOException("what is sent cannot be written", e);
        }
        return counting.bytes;
    }

    private static final class Counting extends OutputStream {
        private long bytes;

        @Override
        public void write(int b) {
            bytes++;
        }

        @Override
        public void write(byte[] b, int off, int len) {
            bytes += len;
        }
    }

    @Override
    public void close() {
        workers.close();
    }
}
