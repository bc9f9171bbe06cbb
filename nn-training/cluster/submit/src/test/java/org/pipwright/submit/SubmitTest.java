package org.pipwright.submit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import org.apache.spark.launcher.JavaModuleOptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jar under Spark's own class for submitting, against the same command without Spark. */
class SubmitTest {
    private static final String JAR = System.getProperty("pipwright.spark.jar");

    private static final List<String> QUESTION = List.of("odds", "--batch", "-", "--net", "fifth", "--lookahead", "1");

    @TempDir
    Path folder;

    /**
     * A finished process.
     *
     * @param out what it printed
     * @param err what it said
     */
    private record Ended(int code, String out, String err) {}

    private Ended run(String classPath, List<String> line) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        // Those of the script spark-submit; Java's vectors are among them.
        command.addAll(List.of(JavaModuleOptions.defaultModuleOptions().split(" ")));
        command.addAll(List.of("-Xmx512m", "-cp", classPath));
        command.addAll(line);
        Path in = Files.writeString(folder.resolve("in"), "start\n");
        Path out = folder.resolve("out");
        Path err = folder.resolve("err");
        Process process = new ProcessBuilder(command)
                .redirectInput(in.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        assertTrue(process.waitFor(4, TimeUnit.MINUTES), Files.readString(err));
        return new Ended(
                process.exitValue(),
                Files.readString(out, StandardCharsets.UTF_8),
                Files.readString(err, StandardCharsets.UTF_8));
    }

    /** Libraries alone, Spark's among them, as in a Spark distribution: Pipwright comes with the jar. */
    private static String spark() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(place -> Files.isRegularFile(Path.of(place))
                        && !place.contains(File.separator + "target" + File.separator))
                .collect(Collectors.joining(File.pathSeparator));
    }

    private Ended submitted(List<String> command) throws IOException, InterruptedException {
        List<String> line =
                new ArrayList<>(List.of("org.apache.spark.deploy.SparkSubmit", "--master", "local[2]", JAR));
        line.addAll(command);
        return run(spark(), line);
    }

    @Test
    void aQuestionIsAnsweredAlike() throws Exception {
        List<String> there = new ArrayList<>(QUESTION);
        there.addAll(List.of("--cluster", "submitted"));
        Ended submitted = submitted(there);
        assertEquals(0, submitted.code(), submitted.err());
        List<String> here = new ArrayList<>(List.of("org.pipwright.cli.Main"));
        here.addAll(QUESTION);
        assertEquals(run(System.getProperty("java.class.path"), here).out(), submitted.out());
        assertTrue(submitted.out().startsWith("{"), submitted.out());
    }

    @Test
    void whatSparkBringsIsLeftOut() throws IOException {
        try (JarFile jar = new JarFile(JAR)) {
            List<String> names = jar.stream().map(entry -> entry.getName()).toList();
            for (String place : List.of("org/apache/spark/", "scala/", "com/fasterxml/", "org/nd4j/")) {
                assertFalse(names.stream().anyMatch(name -> name.startsWith(place)), place);
            }
            assertEquals(
                    "org.pipwright.cli.Main",
                    jar.getManifest().getMainAttributes().getValue("Main-Class"));
        }
    }
}
