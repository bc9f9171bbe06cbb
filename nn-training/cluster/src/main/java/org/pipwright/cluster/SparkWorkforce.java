package org.pipwright.cluster;

import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.apache.spark.SparkContext;
import org.apache.spark.SparkEnv;
import org.apache.spark.api.java.JavaFutureAction;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;

/** The executors of a Spark application. */
final class SparkWorkforce implements Workforce {
    /** Parcels for each task that runs at a time, of one job; with two jobs under way nobody waits for the slowest. */
    private static final int PARCELS = 2;

    private static final int JOBS = 2;

    private static final long LOOK_MILLIS = 50;

    /** How long a cancelled job's cause may take to become known. */
    private static final long LATE_MILLIS = 2_000;

    /** Spark's words for it; a job fails with them a moment before the application has ended. */
    private static final String REMOVED = "Master removed our application";

    private final JavaSparkContext spark;
    private final Colleagues colleagues;
    private final Patience patience;
    private final Runnable closing;
    private final Set<Path> sent = new HashSet<>();
    private Trade<?, ?> trade;
    private String name;
    private Parcels parcels = new Parcels();

    /**
     * A workforce.
     *
     * @param spark the application
     * @param notes told what its user should know
     * @param closing done after the application has ended
     */
    SparkWorkforce(JavaSparkContext spark, Consumer<String> notes, Runnable closing) {
        this.spark = spark;
        this.closing = closing;
        colleagues = new Colleagues(Build.id(), Build.arithmetic(), notes);
        patience = new Patience(spark, notes);
    }

    @Override
    public int size() {
        return Math.max(1, spark.defaultParallelism());
    }

    /** What Spark sends once to each executor. */
    private record Sent<V extends Serializable>(Broadcast<V> broadcast) implements Shared<V> {
        @Override
        public V get() {
            return broadcast.value();
        }

        @Override
        public void drop() {
            // Without waiting. One whose application has ended is gone already.
            if (SparkEnv.get() != null) {
                broadcast.destroy();
            }
        }
    }

    @Override
    public <V extends Serializable> Shared<V> share(V value) {
        requireRunning();
        return new Sent<>(spark.broadcast(value));
    }

    /** A master ends an application whose processes end again and again as soon as workers start them. */
    private void requireRunning() {
        if (spark.sc().isStopped()) {
            throw removed();
        }
    }

    private WorkforceException removed() {
        return new WorkforceException("the master at " + spark.master()
                + " has ended this application: the workers' logs say why its processes could not start");
    }

    /** A trade that comes again has its name and so its workers. */
    private String name(Trade<?, ?> of) {
        if (of != trade) {
            of.classes().forEach(type -> sendJar(Build.place(type)));
            // Rounds of training are alike: the next begins with parcels of the size that the last one found.
            parcels = trade != null && trade.getClass() == of.getClass() ? parcels : new Parcels();
            trade = of;
            name = UUID.randomUUID().toString();
        }
        return name;
    }

    /** Trades of others than engine come in jars of theirs. */
    private void sendJar(Path jar) {
        boolean known = Build.jars().contains(jar.toString());
        if (!spark.isLocal() && !known && Files.isRegularFile(jar) && sent.add(jar)) {
            spark.addJar(jar.toString());
        }
    }

    @Override
    public <T extends Serializable, R extends Serializable> void inOrder(
            Trade<T, R> how, Iterator<T> tasks, Predicate<R> taken, BooleanSupplier stopped) {
        Doing doing = new Doing(Build.id(), name(how), Bytes.of(how));
        Deque<JavaFutureAction<List<Delivery>>> underWay = new ArrayDeque<>();
        try {
            while (!stopped.getAsBoolean()) {
                if (ended(stopped)) {
                    return;
                }
                while (underWay.size() < JOBS && tasks.hasNext()) {
                    List<byte[]> packed = parcels.next(tasks, PARCELS * size());
                    underWay.add(
                            spark.parallelize(packed, packed.size()).map(doing).collectAsync());
                }
                if (underWay.isEmpty()) {
                    return;
                }
                for (Delivery delivery : came(underWay.remove(), stopped)) {
                    if (!take(delivery, taken)) {
                        return;
                    }
                }
            }
        } finally {
            underWay.forEach(job -> job.cancel(true));
        }
    }

    @SuppressWarnings("unchecked")
    private <R extends Serializable> boolean take(Delivery delivery, Predicate<R> taken) {
        colleagues.look(delivery);
        if (delivery.refusal() != null) {
            throw new IllegalArgumentException(delivery.refusal());
        }
        Serializable[] results = Bytes.read(delivery.results());
        parcels.took(results.length, delivery.nanos());
        for (Serializable result : results) {
            if (!taken.test((R) result)) {
                return false;
            }
        }
        return true;
    }

    /** What comes of a job; nothing if it is told to stop before. */
    private List<Delivery> came(JavaFutureAction<List<Delivery>> job, BooleanSupplier stopped) {
        while (true) {
            try {
                return job.get(LOOK_MILLIS, TimeUnit.MILLISECONDS);
            } catch (TimeoutException e) {
                if (stopped.getAsBoolean()) {
                    job.cancel(true);
                    return List.of();
                }
                patience.look();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                job.cancel(true);
                throw new CancellationException("the work was interrupted");
            } catch (ExecutionException e) {
                return failed(e.getCause(), stopped);
            }
        }
    }

    /** On an interrupt from the keyboard Spark may end its jobs before anybody here has been told. */
    private List<Delivery> failed(Throwable cause, BooleanSupplier stopped) {
        awaitStop(stopped);
        if (stopped.getAsBoolean()) {
            return List.of();
        }
        if (spark.sc().isStopped() || String.valueOf(cause.getMessage()).contains(REMOVED)) {
            throw removed();
        }
        throw new WorkforceException("the cluster gave the work up: " + Failures.line(cause));
    }

    /** Whether Spark and the work have been stopped together; fails if only Spark has. */
    private boolean ended(BooleanSupplier stopped) {
        awaitStop(stopped);
        if (!stopped.getAsBoolean()) {
            requireRunning();
        }
        return stopped.getAsBoolean();
    }

    /** If Spark has ended, waits a moment for the reason. */
    private void awaitStop(BooleanSupplier stopped) {
        long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(LATE_MILLIS);
        while (spark.sc().isStopped() && !stopped.getAsBoolean() && System.nanoTime() < until) {
            pause();
        }
    }

    private static void pause() {
        try {
            Thread.sleep(LOOK_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    SparkContext context() {
        return spark.sc();
    }

    @Override
    public void close() {
        spark.close();
        closing.run();
    }
}
