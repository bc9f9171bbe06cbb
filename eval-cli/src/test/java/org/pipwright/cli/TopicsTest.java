package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

class TopicsTest {
    /** The help of each command, made at first need. */
    private static final Map<String, String> HELPS = new HashMap<>();

    private static final Pattern COMMAND = Pattern.compile("pipwright (?!help)([a-z]+)");

    private static final Pattern HELP = Pattern.compile("pipwright help ([a-z ]+)");

    private static final Pattern OPTION = Pattern.compile("--[a-z][a-z-]+");

    private static String topic(String name) {
        Run run = Run.of("help", "topic", name);
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        return run.out();
    }

    /** The commands and helps a topic names are there, and so are the options, each in one command at least. */
    @ParameterizedTest
    @ValueSource(strings = {"notation", "equity", "cube", "match", "training"})
    void whatATopicNamesIsThere(String name) {
        String text = topic(name);
        assertTrue(text.lines().allMatch(line -> line.length() <= 90), text);
        assertTrue(text.lines().count() > 10, text);
        Matcher command = COMMAND.matcher(text);
        while (command.find()) {
            assertTrue(Commands.ALL.containsKey(command.group(1)), command.group());
        }
        Matcher help = HELP.matcher(text);
        while (help.find()) {
            String[] words = ("help " + help.group(1)).split(" ");
            assertEquals(0, Run.of(words).code(), help.group());
        }
        Matcher option = OPTION.matcher(text);
        while (option.find()) {
            assertTrue(
                    Commands.ALL.keySet().stream().anyMatch(each -> HELPS.computeIfAbsent(
                                    each, it -> Run.of("help", it).out())
                            .contains(option.group())),
                    option.group());
        }
    }

    @Test
    void commandsComeFirst() {
        assertEquals(topic("notation"), Run.of("help", "notation").out());
        assertNotEquals(topic("cube"), Run.of("help", "cube").out());
        assertTrue(Run.of("help").out().contains("Topics: notation, equity, cube, match, training."));
    }

    @Test
    void positionsOfTheNotationCanBeRead() {
        String text = topic("notation");
        assertTrue(text.contains("  " + Position.start() + "  "), text);
        assertTrue(text.contains("  2@6 1@bar / 3@4 2@20 of 5  "), text);
        assertEquals(5, PositionText.parse("2@6 1@bar / 3@4 2@20 of 5").checkers());
    }

    @Test
    void allTopicsAreListedWhereOneIsMissing() {
        for (String line : List.of("help dice", "help topic dice", "help topic")) {
            Run run = Run.of(line.split(" "));
            assertEquals(2, run.code());
            assertTrue(run.err().contains("notation, equity, cube, match, training"), run.err());
        }
    }
}
