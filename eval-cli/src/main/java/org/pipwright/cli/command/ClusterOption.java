package org.pipwright.cli.command;

import java.nio.file.Path;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.Workforces;
import picocli.CommandLine.Option;

/** The cluster that a command works on. */
final class ClusterOption {
    @Option(
            names = "--cluster",
            paramLabel = "MASTER",
            description = "Use an Apache Spark cluster: local[N], N threads here, to try it, or spark://HOST:PORT."
                    + " Answers are the same as without. docs/cluster.md tells how to start one.")
    private String master;

    @Option(
            names = "--cluster-settings",
            paramLabel = "FILE",
            description =
                    "Settings of Spark for --cluster, in a properties file: those that the master was started with,"
                            + " the shared secret among them.")
    private Path settings;

    /** Whether there is one. */
    boolean given() {
        if (master == null && settings != null) {
            throw new UserError("--cluster-settings is for a cluster: name its master with --cluster");
        }
        return master != null;
    }

    /** Those who work there. */
    Workforce open(Console console) {
        return Workforces.installed().open(master, Workforces.settings(settings), line -> console.err()
                .println("pipwright: " + line));
    }

    /** Those who work there; null if this machine's threads are to work. */
    Workforce openIfGiven(Console console) {
        return given() ? open(console) : null;
    }
}
