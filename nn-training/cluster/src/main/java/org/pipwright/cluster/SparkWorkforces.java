package org.pipwright.cluster;

import java.net.InetAddress;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.parallel.Workforces;

/** Starts a Spark application of its own for whoever asks for a workforce. */
public final class SparkWorkforces implements Workforces {
    /** What is asked for where spark-submit has begun the application: whatever it was told. */
    private static final String SUBMITTED = "submitted";

    /** A master that has been greeted answers in a second or two; Spark itself would go on trying for a minute. */
    private static final int PATIENCE_SECONDS = 45;

    /** Made by {@link java.util.ServiceLoader}. */
    public SparkWorkforces() {
        // Nothing is needed before somebody asks.
    }

    @Override
    public Workforce open(String master, Map<String, String> settings, Consumer<String> notes) {
        if (master.equals(SUBMITTED)) {
            return submitted(settings, notes);
        }
        Master where = Master.parse(master);
        InetAddress here = where.local() ? InetAddress.getLoopbackAddress() : where.requireThere();
        SparkLog log = SparkLog.quiet();
        SparkConf conf = conf(where, here, settings);
        if (!where.local()) {
            Greeting.requireAnswer(where, here, conf);
        }
        return new SparkWorkforce(started(where, conf), notes, () -> log.tell(notes));
    }

    /** spark-submit hands its settings on as properties of this process; the jar is among them. */
    private static Workforce submitted(Map<String, String> settings, Consumer<String> notes) {
        SparkConf conf = new SparkConf();
        if (!conf.contains("spark.master")) {
            throw new WorkforceException("nothing has been submitted here: '" + SUBMITTED
                    + "' is for what spark-submit starts; name a master, such as spark://HOST:PORT");
        }
        conf.setIfMissing("spark.ui.showConsoleProgress", "false").setIfMissing("spark.locality.wait", "0");
        settings.forEach(conf::set);
        try {
            return new SparkWorkforce(new JavaSparkContext(conf), notes, () -> {});
        } catch (Exception e) {
            // Scala throws what it does not declare.
            throw new WorkforceException("Spark cannot start: " + Failures.line(e));
        }
    }

    /** What the user has set comes before what is set here. */
    private static SparkConf conf(Master master, InetAddress here, Map<String, String> settings) {
        SparkConf conf = new SparkConf()
                .setMaster(master.url())
                .setAppName("Pipwright")
                .set("spark.ui.enabled", "false")
                .set("spark.ui.showConsoleProgress", "false")
                // Workers call this process back, where the master could be reached from.
                .set("spark.driver.host", here.getHostAddress())
                .set("spark.driver.bindAddress", here.getHostAddress())
                // No task is nearer to its data than another.
                .set("spark.locality.wait", "0")
                // Spark takes pieces of 4 MB; inside a region of memory none starts a search for garbage.
                .set("spark.executor.extraJavaOptions", "-XX:G1HeapRegionSize=16m");
        if (!master.local() && !Build.jars().isEmpty()) {
            conf.set("spark.jars", String.join(",", Build.jars()));
        }
        settings.forEach(conf::set);
        return conf;
    }

    private static JavaSparkContext started(Master master, SparkConf conf) {
        CompletableFuture<JavaSparkContext> starting = new CompletableFuture<>();
        Thread thread = new Thread(() -> start(conf, starting), "pipwright-cluster");
        thread.setDaemon(true);
        thread.start();
        try {
            return master.local() ? starting.get() : starting.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            throw new WorkforceException("the master at '" + master.url() + "' takes no application: its log says why");
        } catch (ExecutionException e) {
            throw new WorkforceException("Spark cannot start: " + Failures.line(e.getCause()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new WorkforceException("interrupted while Spark was starting");
        }
    }

    private static void start(SparkConf conf, CompletableFuture<JavaSparkContext> starting) {
        try {
            starting.complete(new JavaSparkContext(conf));
        } catch (Exception | Error e) {
            // Scala throws what it does not declare.
            starting.completeExceptionally(e);
        }
    }
}
