package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;

/** Starts training processes, and kills them as by kill -9. */
final class Killer {
    private final Path temporary;

    /** @param temporary a folder for what they print */
    Killer(Path temporary) {
        this.temporary = temporary;
    }

    /**
     * Starts {@link KilledRun}, waits until what it has printed will do, and a while.
     *
     * @param games after how many games it ends by itself, 0 for never
     * @return whole lines that it has printed by its end
     */
    List<String> killed(Path folder, long games, Predicate<String> reached, int millis)
            throws IOException, InterruptedException {
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        Path output = temporary.resolve("output");
        Path errors = temporary.resolve("errors");
        Process process = new ProcessBuilder(
                        java.toString(),
                        "-Xmx256m",
                        "-XX:+UseSerialGC",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledRun.class.getName(),
                        folder.toString(),
                        Long.toString(games))
                .redirectOutput(output.toFile())
                .redirectError(errors.toFile())
                .start();
        try {
            while (process.isAlive() && !reached.test(Files.readString(output))) {
                Thread.sleep(5);
            }
            Thread.sleep(millis);
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertEquals("", Files.readString(errors));
        return whole(Files.readString(output));
    }

    private static List<String> whole(String text) {
        return text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
    }
}
