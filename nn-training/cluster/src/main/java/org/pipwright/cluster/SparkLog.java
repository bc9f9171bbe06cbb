package org.pipwright.cluster;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;

/** Keeps what Spark says off the terminal: warnings go into a file, which is named at the end if there are any. */
final class SparkLog {
    private static final String CONFIGURATION = "log4j2.configurationFile";

    private static final String FILE = "pipwright.cluster.log";

    private SparkLog() {}

    /** Before Spark is loaded; a configuration that the user has chosen stays. */
    static void quiet() {
        if (System.getProperty(CONFIGURATION) == null && System.getProperty(FILE) == null) {
            System.setProperty(CONFIGURATION, "classpath:org/pipwright/cluster/log4j2.properties");
            System.setProperty(
                    FILE,
                    Path.of(
                                    System.getProperty("java.io.tmpdir"),
                                    "pipwright-cluster-"
                                            + ProcessHandle.current().pid() + ".log")
                            .toString());
        }
    }

    /** Names the file if there is one. */
    static void tell(Consumer<String> notes) {
        String file = System.getProperty(FILE);
        if (file != null && Files.exists(Path.of(file))) {
            notes.accept("Spark's warnings are in '" + file + "'");
        }
    }
}
