package org.pipwright.training.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import org.pipwright.engine.parallel.Workforce;

/** What a run is made with: sources, JDK, machine. */
public final class Provenance {
    /** System property with the folder of the sources, which the launcher sets. */
    private static final String HOME = "pipwright.home";

    private Provenance() {}

    /**
     * The facts as they are now.
     *
     * @param threads threads the run uses
     * @return facts by name, in the order they are to be written in
     */
    public static Map<String, String> now(int threads) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("started", Instant.now().truncatedTo(ChronoUnit.SECONDS).toString());
        facts.put("commit", commit());
        facts.put("java", System.getProperty("java.vm.name") + " " + Runtime.version());
        facts.put("machine", System.getProperty("os.name") + " " + System.getProperty("os.arch") + ", " + processor());
        facts.put("cores", Integer.toString(Runtime.getRuntime().availableProcessors()));
        facts.put("threads", Integer.toString(threads));
        return facts;
    }

    /** The same of a run whose games others play; null if none do. */
    static Map<String, String> now(int threads, Workforce workforce) {
        Map<String, String> facts = now(threads);
        if (workforce != null) {
            // How many they are changes while they play.
            facts.put("games", "played on a cluster");
        }
        return facts;
    }

    /** Without the launcher nobody knows where the sources are; the folder a run is started in may be another project's. */
    private static String commit() {
        String home = System.getProperty(HOME);
        return home == null ? SourceCommit.UNKNOWN : SourceCommit.of(Path.of(home));
    }

    private static String processor() {
        try {
            return Files.readAllLines(Path.of("/proc/cpuinfo")).stream()
                    .filter(line -> line.startsWith("model name"))
                    .map(line -> line.replaceFirst("[^:]*:", "").strip())
                    .findFirst()
                    .orElse("unknown processor");
        } catch (IOException e) {
            return "unknown processor";
        }
    }
}
