package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.console.Console;
import picocli.CommandLine.Command;

/** What people get wrong costs them one line and exit code 2; what we get wrong, one line and exit code 1. */
class ErrorsTest {
    private static String[] words(String line) {
        return Arrays.stream(line.replace("NET", TestNet.path()).split("\\s*\\^\\s*|\\s+"))
                .map(word -> word.replace('_', ' '))
                .toArray(String[]::new);
    }

    /** Underscores stand for spaces inside one argument. */
    @ParameterizedTest
    @CsvFileSource(resources = "errors.txt", delimiter = '|', quoteCharacter = '~')
    void aMistakeIsToldInOneLine(String arguments, String message) {
        Run run = Run.of(words(arguments));
        assertEquals("pipwright: " + message + "\n", run.err());
        assertEquals("", run.out());
        assertEquals(2, run.code());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 7, 8, 100, 2000, -1})
    void aTruncatedModelIsTold(int length, @TempDir Path folder) throws IOException {
        byte[] bytes = Files.readAllBytes(Path.of(TestNet.path()));
        Path file = folder.resolve("cut.safetensors");
        Files.write(file, Arrays.copyOf(bytes, length < 0 ? bytes.length + length : length));
        Run run = Run.of("odds", "start", "--net", file.toString());
        assertTrue(run.err().matches("pipwright: model '[^\n]*cut.safetensors': [^\n]*cut off[^\n]*\n"), run.err());
        assertEquals(2, run.code());
    }

    @Test
    void aDamagedModelIsTold(@TempDir Path folder) throws IOException {
        byte[] bytes = Files.readAllBytes(Path.of(TestNet.path()));
        bytes[bytes.length - 3] ^= 1;
        Path file = Files.write(folder.resolve("bad.safetensors"), bytes);
        Run run = Run.of("net", "verify", file.toString());
        assertTrue(run.err().matches("pipwright: [^\n]*weights are damaged[^\n]*\n"), run.err());
        assertEquals(2, run.code());
    }

    @Test
    void anUnknownNetIsToldWithWhatToUse() {
        Run run = Run.of("rank", "start", "--roll", "31", "--net", "wonder");
        assertTrue(run.err().matches("pipwright: no net 'wonder': [^\n]*\\.safetensors file\n"), run.err());
        assertEquals(2, run.code());
    }

    /** What has no end is read to a limit. */
    @ParameterizedTest
    @EnabledOnOs(OS.LINUX)
    @ValueSource(
            strings = {
                "cube start --away 3,3 --table /dev/zero",
                "record check /dev/zero",
                "review /dev/zero",
                "train --settings /dev/zero --out no-such-folder",
                "rank start --roll 31 --net /dev/zero"
            })
    void aDeviceIsRefused(String line) {
        Run run = Run.of(line.split(" "));
        assertTrue(
                run.err()
                        .matches(
                                "pipwright: [^\n]*'/dev/zero'[^\n]*(it has more than [0-9,]+ bytes|too large)[^\n]*\n"),
                run.err());
        assertEquals(2, run.code());
        assertFalse(Files.exists(Path.of("no-such-folder")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank start --roll 31 --net X",
                "record check X",
                "rank start --roll 31 --svg X/a",
                "cube start --away 3,3 --table X"
            })
    void aLongNameIsNotRepeated(String line) {
        Run run = Run.of(line.replace("X", "x".repeat(5000)).split(" "));
        assertEquals(2, run.code());
        assertTrue(run.err().length() < 600 && run.err().lines().count() == 1, run.err());
    }

    @Test
    void longInputIsQuotedShortly() {
        Run run = Run.of("draw", "9".repeat(5000));
        assertEquals(2, run.code());
        assertTrue(run.err().length() < 300 && run.err().lines().count() == 1, run.err());
    }

    /** A command that fails as only a bug can. */
    @Command(name = "fail")
    static final class Failing implements Runnable {
        @Override
        public void run() {
            throw new IllegalStateException("two\nlines");
        }
    }

    /** A command that runs out of memory. */
    @Command(name = "fill")
    static final class Filling implements Runnable {
        @Override
        public void run() {
            throw new OutOfMemoryError("Java heap space");
        }
    }

    private static Run broken(String... args) {
        return Run.with(Map.of("fail", Failing.class, "fill", Filling.class), "", StandardCharsets.UTF_8, args);
    }

    @Test
    void aBugSaysThatItIsOneAndWhereTheDetailsAre() {
        Run run = broken("fail");
        assertEquals(1, run.code());
        assertEquals(
                "pipwright: Pipwright itself failed (java.lang.IllegalStateException: two lines): that is a bug;"
                        + " --trace shows where\n",
                run.err());
    }

    @Test
    void lackOfMemoryIsNoStackTrace() {
        Run run = broken("fill");
        assertEquals(1, run.code());
        assertEquals("pipwright: out of memory: allow more with PIPWRIGHT_JAVA_OPTIONS=-Xmx4g\n", run.err());
    }

    @Test
    void traceShowsWhereABugIs() {
        Run run = Run.with(Map.of("draw", NullOutput.class), "", StandardCharsets.UTF_8, "draw", "--trace");
        assertEquals(1, run.code());
        assertTrue(run.err().contains("at org.pipwright.cli.ErrorsTest$NullOutput.run"), run.err());
        assertFalse(Run.of("draw", "nonsense", "--trace").err().contains("\tat "), "no trace for a user's mistake");
    }

    /** Fails, and knows the option that all real commands have. */
    @Command(name = "draw")
    static final class NullOutput implements Runnable {
        @picocli.CommandLine.Option(names = "--trace")
        private boolean trace;

        @Override
        public void run() {
            throw new NullPointerException();
        }
    }

    /** An output that takes some bytes and then no more. */
    private static final class Closing extends OutputStream {
        private final String reason;

        Closing(String reason) {
            this.reason = reason;
        }

        @Override
        public void write(int b) throws IOException {
            throw new IOException(reason);
        }
    }

    private static Run into(String reason, String... args) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Console console =
                new Console(new ByteArrayInputStream(new byte[0]), new Closing(reason), err, StandardCharsets.UTF_8);
        return new Run(new Cli(console, Commands.ALL).run(args), "", err.toString(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @ValueSource(strings = {"draw start", "help", "--help", "net", "--version"})
    void aReaderThatHasGoneIsNoError(String arguments) {
        assertEquals(new Run(0, "", ""), into("Broken pipe", arguments.split(" ")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"draw start", "help", "--help", "net", "--version"})
    void aFullDiskIsTold(String arguments) {
        assertEquals(
                new Run(2, "", "pipwright: cannot write to standard output: No space left on device\n"),
                into("No space left on device", arguments.split(" ")));
    }
}
