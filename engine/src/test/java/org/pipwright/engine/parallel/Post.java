package org.pipwright.engine.parallel;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;

/**
 * A workforce without a cluster: everything goes through bytes as on its way to another machine, tasks are done in groups
 * and out of order, and some are done twice, as where a machine is lost.
 */
public final class Post implements Workforce {
    private static final int GROUP = 7;

    private final Random chance = new Random(5);

    @SuppressWarnings("unchecked")
    public static <V> V sent(V value) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
            out.flush();
            return (V) new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray())).readObject();
        } catch (IOException | ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private record Held<V extends Serializable>(V get) implements Shared<V> {}

    @Override
    public int size() {
        return 2;
    }

    @Override
    public <V extends Serializable> Shared<V> share(V value) {
        return new Held<>(value);
    }

    @Override
    public <T extends Serializable, R extends Serializable> void inOrder(
            Trade<T, R> trade, Iterator<T> tasks, Predicate<R> taken, BooleanSupplier stopped) {
        List<Trade.Worker<T, R>> workers =
                List.of(sent(trade).hire(), sent(trade).hire());
        while (tasks.hasNext() && !stopped.getAsBoolean()) {
            List<T> group = new ArrayList<>();
            while (tasks.hasNext() && group.size() < GROUP) {
                group.add(tasks.next());
            }
            for (R result : done(group, workers, stopped)) {
                if (!taken.test(result)) {
                    return;
                }
            }
        }
        workers.forEach(Trade.Worker::close);
    }

    private <T extends Serializable, R extends Serializable> List<R> done(
            List<T> group, List<Trade.Worker<T, R>> workers, BooleanSupplier stopped) {
        List<Integer> order = new ArrayList<>();
        List<R> results = new ArrayList<>(Collections.nCopies(group.size(), null));
        for (int i = 0; i < group.size(); i++) {
            order.add(i);
        }
        order.addAll(order.subList(0, 1));
        Collections.shuffle(order, chance);
        for (int i : order) {
            Trade.Worker<T, R> worker = workers.get(chance.nextInt(workers.size()));
            results.set(i, sent(worker.work(sent(group.get(i)), stopped)));
        }
        return results;
    }

    @Override
    public void close() {
        // Nothing was opened.
    }
}
