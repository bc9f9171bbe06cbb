package org.pipwright.submit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.spark.launcher.JavaModuleOptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.CommandRun;

/** A command on a cluster that is killed as by kill -9 goes on from what was saved. */
@EnabledIfSystemProperty(
        named = "pipwright.test.complete",
        matches = "true",
        disabledReason = "kills commands on a cluster again and again: -Dpipwright.test.complete=true")
class KilledDriverTest {
    private static final long PATIENCE = TimeUnit.MINUTES.toNanos(15);

    private static final Pattern TRIALS = Pattern.compile("(?m)^trials (\\d+)$");

    /** Slow enough that little is played until the first save, which comes after ten seconds. */
    private static final String ROLLOUT =
            "rollout start --roll 3-1 --top 2 --net fifth --lookahead 1 --truncate 6 --trials ";

    private static final String TRAIN = "train --threads 1 --out ";

    private static final String THERE = " --cluster local[2]";

    @TempDir
    Path folder;

    private Process started(String line) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-Xmx512m", "--add-modules", "jdk.incubator.vector"));
        command.addAll(List.of(JavaModuleOptions.defaultModuleOptions().split(" ")));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "org.pipwright.cli.Main"));
        command.addAll(List.of(line.split(" ")));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("log").toFile())
                .start();
    }

    private int trials(Path saved) throws IOException {
        Matcher trials = TRIALS.matcher(Files.exists(saved) ? Files.readString(saved) : "");
        return trials.find() ? Integer.parseInt(trials.group(1)) : 0;
    }

    private static void killAfter(Process driver, Callable<Boolean> saved) throws Exception {
        long until = System.nanoTime() + PATIENCE;
        while (!saved.call() && driver.isAlive() && System.nanoTime() < until) {
            TimeUnit.MILLISECONDS.sleep(20);
        }
        driver.destroyForcibly().waitFor();
    }

    /** A checkpoint after each round, of which there are many. */
    private static final List<String> SETTINGS = List.of(
            "round = 16",
            "targets = lookahead",
            "sample.share = 0.1",
            "contact.hidden = 16,8",
            "race.hidden = 8",
            "evaluation.games = 2",
            "checkpoint.seconds = 0.1");

    private Path settings(int games) throws IOException {
        List<String> lines = new ArrayList<>(List.of("games = " + games));
        lines.addAll(SETTINGS);
        return Files.write(folder.resolve("settings-" + games), lines);
    }

    /** Kills a run once it has written its net; whether that was before its end. */
    private boolean killedOnTheWay(Path run, Path settings) throws Exception {
        Path net = run.resolve("net.safetensors");
        Process driver = started(TRAIN + run + " --settings " + settings + THERE);
        killAfter(driver, () -> Files.exists(net));
        assertTrue(Files.exists(net), Files.readString(folder.resolve("log")));
        return !Files.exists(run.resolve("report.html"));
    }

    /** On a busy machine a run may end before the kill comes: then a longer one is tried. */
    @Test
    void aTrainingRunGoesOn() throws Exception {
        int games = 640;
        Path run = folder.resolve("run");
        while (!killedOnTheWay(run, settings(games))) {
            games *= 2;
            run = folder.resolve("run-" + games);
            assertTrue(games <= 5120, "it was killed too late");
        }

        CommandRun resumed = CommandRun.of("", TRAIN + run + " --resume" + THERE);
        assertEquals(0, resumed.code(), resumed.err());
        Path through = folder.resolve("through");
        CommandRun here = CommandRun.of("", TRAIN + through + " --settings " + settings(games));
        assertEquals(0, here.code(), here.err());
        assertArrayEquals(
                Nets.weights(through.resolve("net.safetensors")), Nets.weights(run.resolve("net.safetensors")));
    }

    @Test
    void whatWasSavedIsGoneOnWith() throws Exception {
        Path saved = folder.resolve("saved.rollout");
        Process driver = started(ROLLOUT + "720000 --save " + saved + THERE);
        killAfter(driver, () -> trials(saved) > 0);
        int before = trials(saved);
        assertTrue(before > 0, Files.readString(folder.resolve("log")));

        String line = ROLLOUT + (before + 36);
        CommandRun resumed = CommandRun.of("", line + " --resume " + saved + THERE);
        assertEquals(0, resumed.code(), resumed.err());
        assertEquals(before + 36, trials(saved));
        assertEquals(CommandRun.of("", line).out(), resumed.out());
    }
}
