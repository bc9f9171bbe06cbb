package org.pipwright.cluster;

import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.apache.spark.api.java.JavaSparkContext;

/** Says once that nobody is there to work, while a job waits for it. */
final class Patience {
    private static final long NANOS = TimeUnit.SECONDS.toNanos(10);

    private final JavaSparkContext spark;
    private final Consumer<String> notes;
    private final long began = System.nanoTime();
    private boolean over;

    Patience(JavaSparkContext spark, Consumer<String> notes) {
        this.spark = spark;
        this.notes = notes;
    }

    void look() {
        if (over || System.nanoTime() - began < NANOS) {
            return;
        }
        over = true;
        // The first is this process, which does no tasks.
        if (!spark.isLocal() && spark.statusTracker().getExecutorInfos().length < 2) {
            notes.accept("waiting for workers: the master at " + spark.master()
                    + " has none free (its web page shows them); Ctrl-C ends this");
        }
    }
}
