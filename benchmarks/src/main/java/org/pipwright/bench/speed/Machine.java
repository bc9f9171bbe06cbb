package org.pipwright.bench.speed;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.stream.Stream;

/**
 * What numbers depend on beside the code.
 *
 * @param date the day, in UTC
 * @param cpu name of the processor, or its architecture where the system does not say
 * @param processors how many the JVM may use
 * @param jdk name and version of the JVM
 * @param load mean number of runnable threads on the machine over the last minute, negative if unknown
 */
record Machine(LocalDate date, String cpu, int processors, String jdk, double load) {
    static Machine now() {
        return new Machine(
                LocalDate.now(ZoneOffset.UTC),
                cpuName(),
                Runtime.getRuntime().availableProcessors(),
                System.getProperty("java.vm.name") + " " + System.getProperty("java.vm.version"),
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }

    private static String cpuName() {
        Path file = Path.of("/proc/cpuinfo");
        String architecture = System.getProperty("os.arch");
        if (!Files.isReadable(file)) {
            return architecture;
        }
        try (Stream<String> lines = Files.lines(file)) {
            return lines.filter(line -> line.startsWith("model name"))
                    .map(line -> line.substring(line.indexOf(':') + 1).strip())
                    .findFirst()
                    .orElse(architecture);
        } catch (IOException e) {
            return architecture;
        }
    }
}
