package org.pipwright.bench;

import java.nio.file.Path;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.parallel.Workforces;
import picocli.CommandLine.Option;

/** The cluster that a measurement is shared out to. */
public final class ClusterOption {
    @Option(
            names = "--cluster",
            paramLabel = "MASTER",
            description = "Work on an Apache Spark cluster: spark://HOST:PORT, or local[N] to try it; docs/cluster.md.")
    private String master;

    @Option(
            names = "--cluster-settings",
            paramLabel = "FILE",
            description = "A properties file with Spark's settings, the shared secret among them.")
    private Path settings;

    /** Those who work there; null if this machine's threads are to work. */
    public Workforce openIfGiven() {
        if (master == null && settings != null) {
            throw new IllegalArgumentException("--cluster-settings is for a cluster: name its master with --cluster");
        }
        try {
            return master == null
                    ? null
                    : Workforces.installed().open(master, Workforces.settings(settings), System.err::println);
        } catch (WorkforceException e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }
}
