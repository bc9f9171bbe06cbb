package org.pipwright.cluster;

import java.nio.file.Path;
import java.util.function.Consumer;

/** Keeps what Spark says off the terminal: warnings go into a file, which is named at the end if there are any. */
final class SparkLog {
    private static final String CONFIGURATION = "log4j2.configurationFile";

    private static final String FILE = "pipwright.cluster.log";

    private final long before = size();

    private SparkLog() {}

    /** Before Spark is loaded; a configuration that the user has chosen stays. */
    static SparkLog quiet() {
        if (System.getProperty(CONFIGURATION) == null && System.getProperty(FILE) == null) {
            String name = "pipwright-cluster-" + ProcessHandle.current().pid() + ".log";
            System.setProperty(CONFIGURATION, "classpath:org/pipwright/cluster/log4j2.properties");
            System.setProperty(
                    FILE, Path.of(System.getProperty("java.io.tmpdir"), name).toString());
        }
        return new SparkLog();
    }

    private static long size() {
        String file = System.getProperty(FILE);
        return file == null ? 0 : Path.of(file).toFile().length();
    }

    /** Names the file if there is something new in it. */
    void tell(Consumer<String> notes) {
        if (size() > before) {
            notes.accept("Spark's warnings are in '" + System.getProperty(FILE) + "'");
        }
    }
}
