package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.Command;

class HelpTest {
    private static final int WIDTH = 90;

    static Stream<String> commands() {
        List<String> paths = new ArrayList<>();
        Commands.ALL.forEach((name, type) -> {
            paths.add(name);
            for (Class<?> sub : type.getAnnotation(Command.class).subcommands()) {
                paths.add(name + " " + sub.getAnnotation(Command.class).name());
            }
        });
        return paths.stream();
    }

    private static String help(String path) {
        Run run = Run.of(("help " + path).strip().split(" "));
        assertEquals(0, run.code());
        assertEquals("", run.err());
        return run.out();
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = HelpTest.class.getResourceAsStream(name)) {
            assertNotNull(in, "no resource " + name);
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Each text is kept in full, so that a change to it is seen and read. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "desk",
                "rank",
                "odds",
                "cube",
                "rollout",
                "count",
                "draw",
                "record",
                "record check",
                "record board",
                "record convert",
                "review",
                "drill",
                "duel",
                "standings",
                "train",
                "tables",
                "net",
                "net describe",
                "net verify",
                "net export",
                "net join",
                "completion",
                "help"
            })
    void theHelpTextIs(String path) throws IOException {
        assertEquals(resource("help" + (path.isEmpty() ? "" : "-" + path.replace(' ', '-')) + ".txt"), help(path));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void eachCommandHasAnExampleAndKeepsToTheWidth(String path) {
        String text = help(path);
        assertTrue(text.lines().allMatch(line -> line.length() <= WIDTH), text);
        assertTrue(text.contains("Usage: pipwright " + path), text);
        boolean group = text.contains("\nCommands:\n");
        assertTrue(group || text.contains("Example"), text);
        assertTrue(group || text.contains("  pipwright " + path), text);
    }

    @ParameterizedTest
    @MethodSource("commands")
    void theOptionAndTheCommandShowTheSame(String path) {
        assertEquals(new Run(0, help(path), ""), Run.of((path + " --help").split(" ")));
    }

    @Test
    void withoutArgumentsTheHelpIsShown() {
        assertEquals(new Run(0, help(""), ""), Run.of());
        assertEquals(new Run(0, help(""), ""), Run.of("--help"));
        assertEquals(new Run(0, help("net"), ""), Run.of("net"));
    }

    @Test
    void namesInTheListAreThoseOfTheCommands() {
        Commands.ALL.forEach((name, type) ->
                assertEquals(name, type.getAnnotation(Command.class).name()));
        assertTrue(Commands.ALL
                .keySet()
                .containsAll(Set.of("rank", "odds", "rollout", "draw", "duel", "standings", "net", "help")));
    }

    @Test
    void theVersionIsThatOfTheBuild() throws IOException {
        String pom = Files.readString(Path.of("pom.xml"));
        String version = pom.replaceAll("(?s).*?<version>([^<]*?)(-SNAPSHOT)?</version>.*", "$1");
        assertEquals(new Run(0, "Pipwright " + version + "\n", ""), Run.of("--version"));
    }
}
