package org.pipwright.cli.command;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.stream.Collectors;
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
            description =
                    "Work on an Apache Spark cluster: spark://HOST:PORT, or local[N] for N threads here, to try it."
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
        return Workforces.installed()
                .open(master, settings(), line -> console.err().println("pipwright: " + line));
    }

    private Map<String, String> settings() {
        if (settings == null) {
            return Map.of();
        }
        Properties read = new Properties();
        try (Reader in = Files.newBufferedReader(settings)) {
            read.load(in);
        } catch (IllegalArgumentException e) {
            throw new UserError("'" + settings + "' is no properties file: write a line NAME VALUE for each setting");
        } catch (IOException e) {
            throw new UserError(
                    "cannot read '" + settings + "': it is missing, a folder, no text, or not yours to read");
        }
        return read.stringPropertyNames().stream().collect(Collectors.toMap(name -> name, name -> read.getProperty(name)
                .strip()));
    }
}
