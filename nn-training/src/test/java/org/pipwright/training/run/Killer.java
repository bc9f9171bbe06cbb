package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Starts training processes, and kills them as by kill -9. */
final class Killer {
    private final Path temporary;
    private final List<String> options;

    /**
     * Kills processes.
     *
     * @param temporary a folder for what they print
     * @param options of their JVM
     */
    Killer(Path temporary, String... options) {
        this.temporary = temporary;
        this.options = List.of(options);
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
        List<String> command = new ArrayList<>(List.of(java.toString(), "-Xmx256m", "-XX:+UseSerialGC"));
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), KilledRun.class.getName()));
        command.addAll(List.of(folder.toString(), Long.toString(games)));
        Process process = new ProcessBuilder(command)
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
