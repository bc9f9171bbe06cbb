package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** No command writes over what it reads, and none over what another program or older work left, unless told to. */
class OutputsTest {
    private static final String RECORD =
            "pipwright record 1\nplayers: Ada, Ben\nmoney: jacoby\n\ngame\nAda 3-1: 8/5 6/5\n";

    @TempDir
    Path folder;

    /** Files of every kind that a command may read or write, and one of none. */
    private void files() throws IOException {
        Files.copy(Path.of(TestNet.path()), folder.resolve("net.safetensors"));
        Files.copy(Path.of(TestNet.path()), folder.resolve("net"));
        Files.writeString(folder.resolve("game.txt"), RECORD);
        Files.writeString(folder.resolve("game"), RECORD);
        Files.writeString(folder.resolve("lines"), "start 3-1\n");
        Files.writeString(folder.resolve("letter"), "Dear Ada,\n");
        Files.writeString(folder.resolve("letter.html"), "Dear Ada,\n");
        Files.writeString(folder.resolve("table.csv"), "away,1\n1,0.5\nafter crawford,0.5\n");
    }

    private Run run(String line) {
        return Run.of(line.replace("F/", folder + "/").split(" "));
    }

    private List<String> state() throws IOException {
        List<String> state = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.sorted().toList()) {
                state.add(file + " " + new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
            }
        }
        return state;
    }

    private void refused(String line, String message) throws IOException {
        List<String> before = state();
        assertEquals(new Run(2, "", "pipwright: " + message.replace("F/", folder + "/") + "\n"), run(line));
        assertEquals(before, state());
    }

    /** Also with --force: nobody means that. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '~',
            value = {
                "rollout start --trials 36 --net F/net --save F/net ~ --save and --net",
                "rollout start --trials 36 --net F/net --save F/../F/net ~ --save and --net",
                "rollout start --trials 36 --away 1,1 --table F/table.csv --save F/table.csv ~ --save and --table",
                "review F/game --lookahead 0 --save F/game ~ --save and FILE",
                "review F/game --lookahead 0 --html F/game ~ --html and FILE",
                "review F/game --lookahead 0 --html F/new --save F/new ~ --html and --save",
                "review F/game --lookahead 0 --net F/net --html F/net ~ --html and --net",
                "draw start --svg F/new --png F/new ~ --svg and --png",
                "drill race --count 1 --sheet F/new --page F/new ~ --sheet and --page",
                "drill race --count 1 --net F/net --page F/net ~ --page and --net",
                "standings F/net@1 pips --games 2 --chart F/net ~ --chart and PLAYER",
                "record convert F/game F/game ~ TARGET and FILE",
                "net export F/net.safetensors F/net.safetensors ~ TARGET and NAME|FILE"
            })
    void whatIsReadIsNotWritten(String line, String two) throws IOException {
        files();
        String resolved = line.replace("F/../F/", folder + "/../" + folder.getFileName() + "/");
        refused(resolved, two + " are the same file: give them different names");
        refused(resolved + " --force", two + " are the same file: give them different names");
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void anotherNameOfTheSameFileIsSeenThrough() throws IOException {
        files();
        Files.createSymbolicLink(folder.resolve("link"), folder.resolve("net"));
        refused(
                "rollout start --trials 36 --net F/net --save F/link --force",
                "--save and --net are the same file: give them different names");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '~',
            value = {
                "rollout start --trials 36 --save F/letter ~ F/letter' is there already: name another file, or",
                "rollout start --trials 36 --cube 1 --save F/net ~ F/net' is there already: name another file, or",
                "review F/game --lookahead 0 --save F/letter ~ F/letter' is there already: name another file, or",
                "review F/game --lookahead 0 --html F/letter.html ~ F/letter.html' is there and is not a page for a browser:"
                        + " name another file, or",
                "draw start --svg F/letter ~ F/letter' is there and is not an SVG picture: name another file, or",
                "draw start --png F/net ~ F/net' is there and is not a PNG picture: name another file, or",
                "drill race --count 1 --page F/letter ~ F/letter' is there and is not a page for a browser: name another file, or",
                "standings random pips --games 2 --chart F/letter ~ F/letter' is there and is not an SVG picture:"
                        + " name another file, or"
            })
    void whatOthersLeftIsKept(String line, String reason) throws IOException {
        files();
        refused(line, "'" + reason + " replace it with --force");
    }

    /** A slip of --save for --resume would begin days of work anew. */
    @ParameterizedTest
    @ValueSource(strings = {"rollout 1@bar 2@6 / 3@4 of 3 --trials 36", "review F/game --lookahead 0"})
    void workThatWasKeptIsNotBegunAnew(String command) throws IOException {
        files();
        String line = command + " --net " + TestNet.path() + " --save F/work";
        Run first = run(line);
        assertEquals(0, first.code(), first.err());
        refused(line, "'F/work' has work that was kept before: --resume goes on with it, --force begins it anew");
        assertEquals(first, run(line.replace("--save", "--resume")));
        assertEquals(first, run(line + " --force"));
    }

    @Test
    void filesOfTheSameKindAreReplacedAndOthersWithForce() throws IOException {
        files();
        for (String name : List.of("a.svg", "letter")) {
            String force = name.equals("letter") ? " --force" : "";
            assertEquals(0, run("draw start --svg F/" + name + force).code());
            assertEquals(0, run("draw start --svg F/" + name).code());
            assertTrue(Files.readString(folder.resolve(name)).startsWith("<svg"));
        }
        assertEquals(0, run("draw start --png F/a.png --width 60").code());
        assertEquals(0, run("draw start --png F/a.png --width 70").code());
        Path copy = folder.resolve("copy.safetensors");
        for (int i = 0; i < 2; i++) {
            assertEquals(
                    0,
                    run("net export " + TestNet.path() + " F/copy.safetensors").code());
            assertEquals(0, run("net export " + TestNet.path() + " F/copy.onnx").code());
            assertEquals(
                    0,
                    run("review F/game --lookahead 0 --html F/page.html --net " + TestNet.path())
                            .code());
        }
        assertArrayEquals(Files.readAllBytes(Path.of(TestNet.path())), Files.readAllBytes(copy));
        Files.writeString(copy, "Dear Ada,\n");
        refused(
                "net export " + TestNet.path() + " F/copy.safetensors",
                "'F/copy.safetensors' is there and is not a net: name another file, or replace it with --force");
        Files.writeString(folder.resolve("copy-race.onnx"), "Dear Ada,\n");
        refused(
                "net export " + TestNet.path() + " F/copy.onnx",
                "'F/copy-race.onnx' is there and is not an ONNX file: name another file, or replace it with --force");
    }

    /** A file made only to reserve its name holds nothing that could be lost. */
    @Test
    void emptyFilesAreReplaced() throws IOException {
        files();
        Files.createFile(folder.resolve("empty"));
        assertEquals(0, run("draw start --svg F/empty").code());
        Files.write(folder.resolve("empty"), new byte[0]);
        assertEquals(0, run("record convert F/game F/empty").code());
        refused("record convert F/game F/empty", "'F/empty' exists: --force replaces it");
    }

    /** A text is no file name, whatever it says; and help is given whatever else the line has. */
    @Test
    void whatIsNoFileIsNotTakenForOne() throws IOException {
        files();
        assertEquals(0, run("draw start --svg F/a.svg --caption F/a.svg").code());
        assertEquals(0, run("draw start --svg F/a.svg --caption F/a.svg").code());
        assertFalse(run("rollout start --save F/letter --help").out().isEmpty());
    }
}
