package org.pipwright.engine.parallel;

import java.util.Map;
import java.util.ServiceLoader;
import java.util.function.Consumer;

/** Finds workforces. What finds them lies in a module of its own, so that whoever asks depends on nothing. */
public interface Workforces {
    /**
     * Finds the machines of a cluster.
     *
     * @param master who shares them out, such as {@code local[4]} or {@code spark://host:7077}
     * @param settings of the cluster, by name
     * @param notes told what its user should know, a line each
     * @return the workforce
     * @throws WorkforceException if there is none
     */
    Workforce open(String master, Map<String, String> settings, Consumer<String> notes);

    /**
     * What finds workforces here.
     *
     * @return the one on the class path
     * @throws WorkforceException if there is none
     */
    static Workforces installed() {
        return ServiceLoader.load(Workforces.class)
                .findFirst()
                .orElseThrow(() -> new WorkforceException(
                        "what works with a cluster is not here: the script pipwright of the sources brings it"));
    }
}
