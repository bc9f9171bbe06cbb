package org.pipwright.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.cli.CommandTree;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine;

class NetAheadTest {
    @TempDir
    Path folder;

    @AfterEach
    void forget() {
        NetAhead.begin();
    }

    static Stream<Arguments> asking() {
        return Stream.of(
                Arguments.of("standard", new String[] {"rank", "start", "--roll", "3-1"}),
                Arguments.of("swift", new String[] {"odds", "start", "--net", "swift"}),
                Arguments.of("swift", new String[] {"review", "--net=swift", "games.txt"}));
    }

    @ParameterizedTest
    @MethodSource("asking")
    void theNetThatIsAskedForIsLoadedOnce(String name, String... args) {
        NetAhead.begin(args);
        assertSame(NetAhead.load(name), NetAhead.load(name));
    }

    /** The list of commands that load one ahead is written by hand, since looking it up would cost what it saves. */
    @Test
    void everyCommandThatJudgesWithANetLoadsItAhead() {
        Map<String, CommandLine> commands = CommandTree.all().getSubcommands();
        assertTrue(commands.size() > 15);
        commands.forEach((name, command) -> {
            NetAhead.begin(name, "start", "--net", "swift");
            boolean ahead = NetAhead.load("swift") == NetAhead.load("swift");
            // The desk shows its first page before it needs a net.
            boolean wanted = command.getCommandSpec().findOption("--net") != null && !name.equals("desk");
            assertEquals(wanted, ahead, name);
        });
    }

    @Test
    void anotherNetIsLoadedWhenItIsAskedFor() {
        NetAhead.begin("cube", "start");
        assertEquals(
                ModelCatalog.shipped().load("swift").notes(),
                NetAhead.load("swift").notes());
    }

    static Stream<Arguments> notAsking() {
        return Stream.of(
                Arguments.of((Object) new String[] {}),
                Arguments.of((Object) new String[] {"rank"}),
                Arguments.of((Object) new String[] {"rank", "--help"}),
                Arguments.of((Object) new String[] {"drill", "-h"}),
                Arguments.of((Object) new String[] {"draw", "start", "--net", "swift"}));
    }

    @ParameterizedTest
    @MethodSource("notAsking")
    void whereNoNetIsNeededNoneIsLoaded(String... args) {
        NetAhead.begin(args);
        assertNotSame(NetAhead.load("swift"), NetAhead.load("swift"));
    }

    @Test
    void whatIsWrongWithAFileIsSaidAsEver() throws Exception {
        Path file = Files.writeString(folder.resolve("broken.safetensors"), "no net");
        NetAhead.begin("rank", "start", "--net", file.toString());
        String expected = assertThrows(InvalidModelException.class, () -> ModelCatalog.shipped()
                        .load(file.toString()))
                .getMessage();
        assertEquals(
                expected,
                assertThrows(InvalidModelException.class, () -> NetAhead.load(file.toString()))
                        .getMessage());
    }

    /** Who is interrupted while the net is being loaded loads it alone, and is interrupted still. */
    @Test
    void anInterruptionIsKept() {
        NetAhead.begin("rank", "start", "--net", "swift");
        Thread.currentThread().interrupt();
        assertEquals(
                ModelCatalog.shipped().load("swift").notes(),
                NetAhead.load("swift").notes());
        assertTrue(Thread.interrupted());
    }
}
