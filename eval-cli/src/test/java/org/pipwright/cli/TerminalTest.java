package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.Screen;

/** What commands print on a terminal, narrow or wide, with colours or without, and where the locale knows only ASCII. */
class TerminalTest {
    private static String on(Screen screen, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Console console = new Console(
                new ByteArrayInputStream(new byte[0]),
                out,
                new ByteArrayOutputStream(),
                StandardCharsets.UTF_8,
                screen);
        assertEquals(0, new Cli(console, Commands.ALL).run(args));
        return out.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
    }

    private static String rank(Screen screen) {
        return on(screen, "rank", "start", "--roll", "3-1", "--net", TestNet.path());
    }

    private static String plain(String coloured) {
        return coloured.replaceAll("\u001b\\[[\\d;]*m", "");
    }

    @Test
    void gradesHaveColours() {
        String coloured = rank(new Screen(0, true));
        assertTrue(coloured.contains("\u001b[32mfine\u001b[0m"), coloured);
        assertEquals(rank(Screen.NONE), plain(coloured));
        assertFalse(rank(Screen.NONE).contains("\u001b"));
    }

    /** From the first line of the table on, nothing is longer than the screen is wide. */
    @ParameterizedTest
    @ValueSource(ints = {40, 60, 80})
    void rankingsFitTheScreen(int columns) {
        String text = rank(new Screen(columns, false));
        String table = text.substring(text.indexOf("\n\n") + 2);
        assertTrue(table.lines().allMatch(line -> line.length() <= columns), table);
        assertTrue(table.contains("backg.") && table.contains("lose, %"), table);
        assertTrue(table.split("\n\n").length >= (columns < 60 ? 2 : 1), table);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "rank", "tables", "net", "notation"})
    void helpFitsTheScreen(String name) {
        String text = on(new Screen(62, false), ("help " + name).strip().split(" "));
        assertTrue(text.lines().filter(line -> !line.startsWith("  ")).allMatch(line -> line.length() <= 62), text);
        String wide = on(new Screen(200, false), ("help " + name).strip().split(" "));
        assertEquals(on(Screen.NONE, ("help " + name).strip().split(" ")), wide);
    }

    @Test
    void helpHasColours() {
        String coloured = on(new Screen(0, true), "help", "rank");
        assertTrue(coloured.contains("\u001b["), coloured);
        assertEquals(on(Screen.NONE, "help", "rank"), plain(coloured));
    }

    /** A process of its own, whose locale says which encoding it has. */
    @ParameterizedTest
    @CsvSource({"C, false", "C.UTF-8, true"})
    @EnabledOnOs(OS.LINUX)
    void boardsGoByTheLocale(String locale, boolean unicode) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "org.pipwright.cli.Main",
                "draw",
                "start"));
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("LC_ALL", locale);
        byte[] out = builder.start().getInputStream().readAllBytes();
        String text = new String(out, StandardCharsets.UTF_8);
        assertEquals(unicode, text.contains(" 5\u25cf") && text.contains(" 5\u25cb"), text);
        assertEquals(!unicode, text.contains(" 5#") && text.contains(" 5o"), text);
        assertEquals(unicode, text.chars().anyMatch(sign -> sign > 127), text);
    }
}
