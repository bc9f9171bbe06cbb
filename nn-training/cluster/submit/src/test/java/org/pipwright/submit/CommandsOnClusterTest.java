package org.pipwright.submit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.CommandRun;

/** Commands print with {@code --cluster} what they print without. */
@EnabledIfSystemProperty(
        named = "pipwright.test.complete",
        matches = "true",
        disabledReason = "starts a cluster for each command: -Dpipwright.test.complete=true")
class CommandsOnClusterTest {
    private static final String LINES =
            "start 3-1\n\nstart\nstart 6-4 # which play?\n{\"position\":\"start\",\"roll\":\"6-2\"}\nno position\n"
                    + "5@8 4@7 3@6 3@10 / 5@8 4@7 3@6 3@11 5-2\n5@1 / 3@2 1-1\n";

    @TempDir
    Path folder;

    /** Else the first command that needs the tables says that it builds them. */
    @BeforeAll
    static void buildTables() {
        assertEquals(0, CommandRun.of("", "tables").code());
    }

    /** On a slow machine Spark may have warned of something, and a rollout may have told how far it is. */
    private static CommandRun run(String input, String line) {
        CommandRun run = CommandRun.of(input, line);
        String err = run.err().replaceAll("pipwright: Spark's warnings are in .*\n|\\d+ of \\d+ games: .*\n", "");
        return new CommandRun(run.code(), run.out(), err);
    }

    private static CommandRun assertSame(String input, String line) {
        CommandRun here = run(input, line);
        assertEquals(here, run(input, line + " --cluster local[2]"));
        return here;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank --batch - --net fifth --top 2 --lookahead 1",
                "rank --batch - --net fifth --away 3,5",
                "odds --batch - --net fifth"
            })
    void batches(String line) {
        assertEquals(7, assertSame(LINES, line).out().lines().count());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rollout start --roll 3-1 --top 2 --net fifth --trials 72 --truncate 6",
                "rollout start --cube 1 --net fifth --trials 36 --truncate 4 --json",
                "duel fifth builder --games 128 --luck",
                "duel fifth@1 fifth --match 3 --games 8 --json",
                "standings fifth builder racer --games 32",
                "drill hitting --net fifth --lookahead 0 --count 2 --json",
                "drill takes-and-passes --net fifth --weaker fifth@0 --lookahead 0 --count 2 --most-games 64"
            })
    void games(String line) {
        assertSame("", line);
    }

    private static final List<String> RECORD = List.of(
            "pipwright record 1", "players: Ada, Ben", "match: 3", "", "game", "Ada 3-1: 13/9", "Ben 6-2: 13/5");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "review %s --net fifth --lookahead 0 --rollout 36 --no-simulation --json",
                "review %s --net fifth",
                "drill --net fifth --lookahead 0 --count 1 --cost 0.01 --margin 0.01 --from %s"
            })
    void records(String line) throws IOException {
        Path record = Files.write(folder.resolve("record.txt"), RECORD);
        assertSame("", String.format(line, record));
    }

    private byte[] trained(String settings, String name, String more) throws IOException {
        Path file = Files.writeString(folder.resolve("settings"), settings.replace(", ", "\n"));
        Path run = folder.resolve(name);
        CommandRun trained = CommandRun.of("", "train --threads 2 --settings " + file + " --out " + run + more);
        assertEquals(0, trained.code(), trained.err());
        assertEquals(run.resolve("net.safetensors") + System.lineSeparator(), trained.out());
        return Nets.weights(run.resolve("net.safetensors"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "ends = tables, sample.share = 0.3",
                "targets = lookahead, sample.share = 0.05, average = 10",
                "targets = lookahead, sample.share = 0.05, staleness = 1"
            })
    void training(String more) throws IOException {
        String settings =
                "games = 200, round = 64, contact.hidden = 32, race.hidden = 8, evaluation.games = 2, " + more;
        assertArrayEquals(trained(settings, "here", ""), trained(settings, "there", " --cluster local[2]"));
    }

    private static void assertRefused(String line, String start) {
        CommandRun run = CommandRun.of("", line);
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().startsWith("pipwright: " + start), run.err());
    }

    @Test
    void whatIsNoClusterIsSaidInALine() throws IOException {
        Path settings = folder.resolve("none.properties");
        assertRefused("odds --batch - --cluster nowhere", "no master can be called 'nowhere'");
        assertRefused("odds --batch - --cluster spark://127.0.0.1:1", "no master answers at 'spark://127.0.0.1:1'");
        assertRefused("odds --batch - --cluster submitted", "nothing has been submitted here: 'submitted' is for what");
        assertRefused("odds start --cluster local[2]", "--cluster is for many positions");
        assertRefused("odds --batch - --cluster-settings x", "--cluster-settings is for a cluster");
        assertRefused("odds --batch - --cluster local --cluster-settings " + settings, "cannot read '" + settings);
        String train = "train --games 64 --out " + folder.resolve("run");
        assertRefused(train + " --cluster spark://127.0.0.1:1", "no master answers at 'spark://127.0.0.1:1'");
        assertFalse(Files.exists(folder.resolve("run")));
        assertRefused(
                "train --device threads --minutes 1 --out run --cluster local[2]",
                "--cluster is for rounds of self-play, which a run with --device threads does not have");
        Files.writeString(settings, "spark.task.cpus none\n");
        assertRefused("odds --batch - --cluster local --cluster-settings " + settings, "Spark cannot start: ");
    }
}
