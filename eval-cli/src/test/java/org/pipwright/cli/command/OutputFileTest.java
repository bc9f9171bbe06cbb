package org.pipwright.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

class OutputFileTest {
    @TempDir
    Path folder;

    private static String refused(Path file, String... endings) {
        return assertThrows(UserError.class, () -> OutputFile.checked(file.toString(), endings))
                .getMessage();
    }

    /** Endings of no format, or none, say nothing against it. */
    @ParameterizedTest
    @ValueSource(strings = {"a.svg", "a.SVG", "a", "a.v2", "a.svg.new", ".svg"})
    void whatMayBeSvg(String name) {
        Path file = folder.resolve(name);
        assertEquals(file, OutputFile.checked(file.toString(), "svg"));
    }

    /** The name of a format alone is no ending. */
    @Test
    void aNameWithoutAPoint() {
        assertEquals(Path.of("png"), OutputFile.checked("png", "svg"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.png", "a.svg.PNG", "a.html", "a.txt"})
    void whatIsNoSvg(String name) {
        assertTrue(refused(folder.resolve(name), "svg").endsWith("what is written is SVG: let the name end in .svg"));
    }

    @Test
    void checkingWritesNothingAndWritingReplaces() throws IOException {
        Path file = OutputFile.checked(folder.resolve("a").toString());
        assertEquals(0, Files.list(folder).count());
        OutputFile.write(file, new byte[] {1});
        OutputFile.write(OutputFile.checked(file.toString()), new byte[] {2, 3});
        assertArrayEquals(new byte[] {2, 3}, Files.readAllBytes(file));
    }

    /** Writing replaces what is there, and a device must not be replaced. */
    @Test
    void aDeviceIsRefused() {
        Path device = Path.of("/dev/null");
        assumeTrue(Files.exists(device));
        assertEquals("cannot write '/dev/null': it is not an ordinary file", refused(device));
    }

    /** The system says so, before any work; most have 255 bytes for a name. */
    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void aNameThatIsTooLongIsRefused() {
        assertTrue(refused(folder.resolve("x".repeat(300))).endsWith("...': File name too long"));
    }

    @Test
    void aFolderThatHasGoneIsTold() {
        Path file = folder.resolve("gone").resolve("a");
        String message = assertThrows(UserError.class, () -> OutputFile.write(file, new byte[1]))
                .getMessage();
        assertTrue(message.endsWith("': its folder is missing or not yours to write to"), message);
    }

    @Test
    void aFolderOfOthersIsRefused() throws IOException {
        Path closed = Files.createDirectory(folder.resolve("closed"));
        assumeTrue(closed.toFile().setWritable(false) && !Files.isWritable(closed), "root may write anywhere");
        assertTrue(refused(closed.resolve("a")).endsWith("its folder is not yours to write to"));
    }

    @Test
    void theOptionsThatAreChecked() {
        Console console = Console.ofProcess();
        List<String> checked = new ArrayList<>();
        for (Object command : List.of(
                new DrawCommand(console),
                new RolloutCommand(console),
                new ReviewCommand(console),
                new DrillCommand(console),
                new StandingsCommand(console))) {
            CommandLine line = new CommandLine(command);
            for (OptionSpec option : line.getCommandSpec().options()) {
                if (List.of(option.converters()).stream()
                        .anyMatch(converter -> converter.getClass().getEnclosingClass() == OutputFile.class)) {
                    checked.add(line.getCommandName() + " " + option.longestName());
                }
            }
        }
        assertEquals(
                List.of(
                        "draw --svg",
                        "draw --png",
                        "rollout --save",
                        "rollout --resume",
                        "review --html",
                        "review --save",
                        "review --resume",
                        "drill --sheet",
                        "drill --page",
                        "standings --chart"),
                checked);
    }
}
