package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Short commands run where the training libraries and the server are not even there: none of their classes is loaded. */
class LazyLoadingTest {
    private static final List<String> HEAVY = List.of(
            "nn-training",
            "nd4j",
            "deeplearning4j",
            "javacpp",
            "openblas",
            "bytedeco",
            "javalin",
            "jetty",
            "kotlin",
            "htmx");

    private static URLClassLoader withoutTraining() throws Exception {
        return without(HEAVY);
    }

    private static URLClassLoader without(List<String> jars) throws Exception {
        List<URL> light = new ArrayList<>();
        String[] entries = System.getProperty("java.class.path").split(File.pathSeparator);
        for (String entry : entries) {
            if (jars.stream().noneMatch(entry.toLowerCase(java.util.Locale.ROOT)::contains)) {
                light.add(new File(entry).toURI().toURL());
            }
        }
        assertTrue(light.size() < entries.length, "nothing was left out");
        return new URLClassLoader(light.toArray(URL[]::new), ClassLoader.getPlatformClassLoader());
    }

    @Test
    void trainingIsReallyOutOfReach() throws Exception {
        try (URLClassLoader loader = withoutTraining()) {
            assertThrows(ClassNotFoundException.class, () -> loader.loadClass("org.nd4j.linalg.factory.Nd4j"));
            assertThrows(ClassNotFoundException.class, () -> loader.loadClass("io.javalin.Javalin"));
            assertThrows(ClassNotFoundException.class, () -> loader.loadClass("org.eclipse.jetty.server.Server"));
            assertThrows(ClassNotFoundException.class, () -> loader.loadClass("kotlin.Unit"));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank start --roll 3-1 --net NET",
                "rank start --roll 3-1 --explain --net NET",
                "odds start --net NET",
                "cube start --net NET",
                "rank start --roll 3-1 --lookahead 1 --net NET",
                "rollout start --truncate 1 --trials 36 --net NET",
                "draw start",
                "drill opening --count 1 --lookahead 0 --net NET",
                "record",
                "review src/docs/evening.txt --lookahead 0 --net NET",
                "duel racer builder --games 2",
                "standings racer hitter builder --games 4",
                "count start",
                "net",
                "help",
                "help rank",
                "help desk",
                "help notation",
                "completion bash"
            })
    void runsWithoutTheTrainingLibraries(String line) throws Exception {
        try (URLClassLoader loader = withoutTraining()) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            int code = run(loader, out, line.replace("NET", TestNet.path()).split(" "));
            assertEquals(0, code, out.toString(StandardCharsets.UTF_8));
        }
    }

    /** It is for races' odds by pips, duels' tests and ratings; other commands must not wait for it to be loaded. */
    @ParameterizedTest
    @ValueSource(strings = {"rank start --roll 3-1 --net NET", "odds start --net NET", "draw start", "help rank"})
    void shortCommandsDoNotLoadCommonsMath(String line) throws Exception {
        try (URLClassLoader loader = without(List.of("commons-math3"))) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            int code = run(loader, out, line.replace("NET", TestNet.path()).split(" "));
            assertEquals(0, code, out.toString(StandardCharsets.UTF_8));
        }
    }

    /** Does by reflection what {@link Run} does. */
    private static int run(ClassLoader loader, OutputStream out, String... args) throws Exception {
        Class<?> consoleType = loader.loadClass("org.pipwright.cli.console.Console");
        Object console = consoleType
                .getConstructor(InputStream.class, OutputStream.class, OutputStream.class, Charset.class)
                .newInstance(new ByteArrayInputStream(new byte[0]), out, out, StandardCharsets.UTF_8);
        Field all = loader.loadClass("org.pipwright.cli.Commands").getDeclaredField("ALL");
        all.setAccessible(true);
        Constructor<?> cli = loader.loadClass("org.pipwright.cli.Cli").getDeclaredConstructor(consoleType, Map.class);
        cli.setAccessible(true);
        Method run = cli.getDeclaringClass().getDeclaredMethod("run", String[].class);
        run.setAccessible(true);
        return (int) run.invoke(cli.newInstance(console, all.get(null)), (Object) args);
    }
}
