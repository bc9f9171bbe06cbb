package org.pipwright.engine.parallel;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.ServiceLoader;
import java.util.function.Consumer;
import java.util.stream.Collectors;

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
     * Reads settings of a cluster.
     *
     * @param file a properties file; null for none
     * @return the settings, by name
     * @throws WorkforceException if it cannot be read
     */
    static Map<String, String> settings(Path file) {
        Properties read = new Properties();
        if (file != null) {
            try (Reader in = Files.newBufferedReader(file)) {
                read.load(in);
            } catch (IllegalArgumentException e) {
                throw new WorkforceException(
                        "'" + file + "' is not a properties file: write a line NAME VALUE for each setting");
            } catch (IOException e) {
                throw new WorkforceException(
                        "cannot read '" + file + "': it is missing, a folder, no text, or not yours to read");
            }
        }
        return read.stringPropertyNames().stream().collect(Collectors.toMap(name -> name, name -> read.getProperty(name)
                .strip()));
    }

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
