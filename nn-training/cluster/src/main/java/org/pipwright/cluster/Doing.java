package org.pipwright.cluster;

import java.io.Serializable;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.apache.spark.SparkEnv;
import org.apache.spark.TaskContext;
import org.apache.spark.api.java.function.Function;
import org.pipwright.engine.parallel.Trade;

/**
 * Does a parcel of tasks on a worker: {@link Bytes} of an array of them.
 *
 * @param build that of the process that asks; another does nothing
 * @param name of the trade
 * @param trade {@link Bytes} of it
 */
record Doing(String build, String name, byte[] trade) implements Function<byte[], Delivery> {
    private static final long serialVersionUID = 1;

    @Override
    public Delivery call(byte[] parcel) {
        long began = System.nanoTime();
        String refusal = null;
        byte[] results = {};
        if (build.equals(Build.id())) {
            try {
                results = done(parcel);
            } catch (IllegalArgumentException e) {
                refusal = String.valueOf(e.getMessage());
            }
        }
        return new Delivery(
                SparkEnv.get().blockManager().blockManagerId().host(),
                Build.id(),
                Build.arithmetic(),
                results,
                refusal,
                System.nanoTime() - began);
    }

    private byte[] done(byte[] parcel) {
        Serializable[] tasks = Bytes.read(parcel);
        Hands<Serializable, Serializable> hands =
                Hands.of(name, () -> Bytes.<Trade<Serializable, Serializable>>read(trade));
        Trade.Worker<Serializable, Serializable> worker = hands.take();
        TaskContext context = TaskContext.get();
        BooleanSupplier stopped = context::isInterrupted;
        Serializable[] results = new Serializable[tasks.length];
        for (int i = 0; i < tasks.length; i++) {
            if (stopped.getAsBoolean()) {
                throw new CancellationException("the task was cancelled");
            }
            results[i] = worker.work(tasks[i], stopped);
        }
        // After a failure it is not given back: who knows in which state it is.
        hands.back(worker);
        return Bytes.of(results);
    }
}
