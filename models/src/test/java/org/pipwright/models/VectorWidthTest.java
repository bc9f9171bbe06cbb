package org.pipwright.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** Narrow vectors, or none, add in another order than wide ones: the same chances but for the rounding of floats. */
class VectorWidthTest {
    /** Sums of hundreds of terms, each off by 2^-24 of its size, and not all to one side. */
    private static final double TOLERANCE = 5e-6;

    private static List<Double> printed(String... options) throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = new ArrayList<>(List.of(java, "-Xmx512m", "-XX:+UseSerialGC"));
        command.addAll(List.of(options));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), PrintedChances.class.getName()));
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        List<Double> numbers =
                process.inputReader().lines().map(Double::valueOf).toList();
        assertEquals(0, process.waitFor(), String.join(" ", command));
        return numbers;
    }

    /** AVX 1 leaves vectors of floats 128 bits here, AVX 2 256; -XX:UseAVX is for x86 only. */
    @Test
    @EnabledIfSystemProperty(named = "os.arch", matches = "amd64|x86_64")
    void everyWidthSaysTheSame() throws Exception {
        List<Double> here = PrintedChances.numbers();
        List<List<Double>> others = List.of(
                printed("--add-modules", "jdk.incubator.vector", "-XX:UseAVX=1"),
                printed("--add-modules", "jdk.incubator.vector", "-XX:UseAVX=2"),
                printed());
        for (List<Double> other : others) {
            assertEquals(here.size(), other.size());
            double worst = 0;
            for (int i = 0; i < here.size(); i++) {
                worst = Math.max(worst, Math.abs(here.get(i) - other.get(i)));
            }
            assertTrue(worst < TOLERANCE, "chances differ by " + worst);
        }
        assertTrue(others.stream().anyMatch(other -> !other.equals(here)), "no JVM added in another order");
    }
}
