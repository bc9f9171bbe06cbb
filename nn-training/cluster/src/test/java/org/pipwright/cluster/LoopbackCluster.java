package org.pipwright.cluster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A master and workers, each a process of its own, that listen on the loopback address only and share a secret. */
final class LoopbackCluster implements AutoCloseable {
    private static final long PATIENCE = TimeUnit.MINUTES.toNanos(4);

    private static final Pattern STARTED = Pattern.compile("Starting Spark master at (spark://127\\.0\\.0\\.1:\\d+)");

    private final Path folder;
    private final Path settings;
    private final Process master;
    private final List<Process> workers = new ArrayList<>();
    private final String url;

    LoopbackCluster(Path folder) throws IOException, InterruptedException {
        this.folder = folder;
        // What Spark calls its home: here classes come from the test's class path.
        Files.createDirectories(folder.resolve("jars"));
        settings = folder.resolve("cluster.properties");
        Files.write(
                settings,
                List.of(
                        "spark.authenticate true",
                        "spark.authenticate.secret only.for.this.test",
                        "spark.network.crypto.enabled true",
                        "spark.master.rest.enabled false"));
        master = start("master", Map.of(), "org.apache.spark.deploy.master.Master", "--port", "0");
        Matcher started = said("master", STARTED);
        url = started.group(1);
    }

    String url() {
        return url;
    }

    /** What whoever uses the cluster has to set. */
    Map<String, String> settings() {
        return Map.of(
                "spark.authenticate", "true",
                "spark.authenticate.secret", "only.for.this.test",
                "spark.network.crypto.enabled", "true",
                "spark.executor.memory", "512m",
                "spark.executor.extraClassPath", System.getProperty("java.class.path"));
    }

    /** How many workers there have been. */
    int workers() {
        return workers.size();
    }

    /** Starts a worker with one core and waits until the master knows it. */
    void addWorker() throws IOException, InterruptedException {
        addWorker("");
    }

    /** The same, where what it starts gets options for Java of its own, as on another kind of machine. */
    void addWorker(String options) throws IOException, InterruptedException {
        String name = "worker" + workers.size();
        workers.add(start(
                name,
                Map.of("JAVA_TOOL_OPTIONS", options),
                "org.apache.spark.deploy.worker.Worker",
                "--cores",
                "1",
                "--memory",
                "512m",
                "--work-dir",
                folder.resolve(name).toString(),
                url));
        said(name, Pattern.compile("Successfully registered with master"));
    }

    /** As kill -9 does, the worker and what it has started. */
    void kill(int worker) {
        Process process = workers.get(worker);
        List<ProcessHandle> all = new ArrayList<>(process.descendants().toList());
        all.add(process.toHandle());
        all.forEach(ProcessHandle::destroyForcibly);
    }

    /** A file takes the place of the folder that a worker works in, so that nothing can be written there. */
    void spoil(int worker) throws IOException {
        Path place = folder.resolve("worker" + worker);
        Files.delete(place);
        Files.createFile(place);
    }

    private Process start(String name, Map<String, String> environment, String type, String... more)
            throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC"));
        command.addAll(List.of(org.apache.spark.launcher.JavaModuleOptions.defaultModuleOptions()
                .split(" ")));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), type));
        command.addAll(List.of("--host", "127.0.0.1", "--webui-port", "0"));
        command.addAll(List.of("--properties-file", settings.toString()));
        command.addAll(List.of(more));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log(name).toFile());
        builder.environment().putAll(environment);
        builder.environment().put("SPARK_HOME", folder.toString());
        // Else it looks for what only a Spark distribution has.
        builder.environment().put("SPARK_SCALA_VERSION", "2.13");
        builder.environment().put("SPARK_LOCAL_IP", "127.0.0.1");
        return builder.start();
    }

    private Path log(String name) {
        return folder.resolve(name + ".log");
    }

    private Matcher said(String name, Pattern words) throws IOException, InterruptedException {
        long until = System.nanoTime() + PATIENCE;
        while (System.nanoTime() < until) {
            Matcher matcher = words.matcher(Files.exists(log(name)) ? Files.readString(log(name)) : "");
            if (matcher.find()) {
                return matcher;
            }
            Thread.sleep(50);
        }
        throw new IllegalStateException(name + " did not say '" + words + "':\n" + Files.readString(log(name)));
    }

    @Override
    public void close() {
        for (int i = 0; i < workers.size(); i++) {
            kill(i);
        }
        master.destroyForcibly();
    }
}
