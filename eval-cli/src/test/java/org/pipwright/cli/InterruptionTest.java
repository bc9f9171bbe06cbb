package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A real process that is told to end: it reports what is known. */
@DisabledOnOs(OS.WINDOWS)
class InterruptionTest {
    /** What Ctrl-C sends; a JVM that ends because of it has 128 more as its exit code. */
    private static final int SIGINT = 2;

    @TempDir
    Path temporary;

    @BeforeEach
    void interruptsAreHeard() throws Exception {
        Interrupts.assumeHeard();
    }

    private Path errors() {
        return temporary.resolve("errors");
    }

    private Process start(String line) throws IOException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = new ArrayList<>(
                List.of(java, "-Xmx256m", "-cp", System.getProperty("java.class.path"), "org.pipwright.cli.Main"));
        command.addAll(List.of(line.replace("NET", TestNet.path()).split(" ")));
        return new ProcessBuilder(command).redirectError(errors().toFile()).start();
    }

    /** Sends Ctrl-C's signal; returns what the process still prints, and sees that it ends. */
    private String interrupted(Process process) throws Exception {
        Interrupts.send(process);
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(20, TimeUnit.SECONDS), "it ends");
        assertEquals(128 + SIGINT, process.exitValue(), Files.readString(errors()));
        return out;
    }

    /** Ends the process when it has had time to play some games; on a busy machine that can take several tries. */
    @ParameterizedTest
    @ValueSource(strings = {"duel racer builder", "standings racer builder"})
    void whatIsKnownIsReported(String line) throws Exception {
        String out = "";
        for (int seconds = 3; (out.isEmpty() || out.contains(" 0 games in pairs")) && seconds <= 48; seconds *= 2) {
            Process process = start(line + " --games 2000000000");
            assertEquals(false, process.waitFor(seconds, TimeUnit.SECONDS), "it would play for hours");
            out = interrupted(process);
        }
        assertTrue(out.matches("(?s).* [1-9]\\d* games in pairs, seed 1\n.*[+-]\\d\\.\\d{4}.*"), out);
    }

    /** What is known are whole rounds, and the same numbers as those of a rollout of as many games. */
    @ParameterizedTest
    @ValueSource(strings = {"", "--away 5,3 "})
    void aRolloutPrintsItsStandings(String score) throws Exception {
        Path file = temporary.resolve("kept");
        String line = "rollout start --roll 31 --top 2 --truncate 3 " + score + "--net " + TestNet.path();
        // One thread, since as many games are played once more.
        Process process = start(line + " --trials 1000000 --threads 1 --save " + file);
        while (process.isAlive() && !Files.readString(errors()).contains(" games: ")) {
            Thread.sleep(20);
        }
        assertEquals(false, process.waitFor(1, TimeUnit.SECONDS), "it would play for hours");
        String out = interrupted(process);
        int games = Integer.parseInt(out.replaceAll("(?s).*?(\\d+) games.*", "$1"));
        assertTrue(games > 0 && games < 1000000 && games % 36 == 0, out);
        assertEquals(games, trials(file), "it keeps what it prints");
        assertEquals(Run.of((line + " --trials " + games).split(" ")).out(), out);
    }

    private static int trials(Path file) throws IOException {
        return Integer.parseInt(Files.readString(file).replaceAll("(?s).*\ntrials (\\d+)\n.*", "$1"));
    }

    /**
     * What ends a computation without a result is told, although the process is ending already. It must be interrupted once
     * it plays, which nothing shows: on a busy machine that can take long, so that there are several tries.
     */
    @Test
    void aRolloutThatKnowsNothingYetSaysSo() throws Exception {
        String err = "";
        for (int seconds = 3; err.isEmpty() && seconds <= 30; seconds *= 2) {
            Process process = start("rollout start --lookahead 2 --trials 1000000 --net NET");
            assertEquals(false, process.waitFor(seconds, TimeUnit.SECONDS), "its first round takes long");
            assertEquals("", interrupted(process));
            err = Files.readString(errors());
        }
        assertTrue(err.matches("(?s)(building [^\n]*\n)*pipwright: [^\n]*: nothing is known yet\n"), err);
    }
}
