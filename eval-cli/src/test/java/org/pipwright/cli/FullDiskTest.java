package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * A file that cannot be written any more in the middle of the work, and one that cannot be begun. A limit on the size of
 * files (ulimit of bash, in KiB) stands for the full disk: with both a write fails.
 */
@EnabledOnOs({OS.LINUX, OS.MAC})
class FullDiskTest {
    /** With so many candidates the numbers take several times the room that they take before the first game. */
    private static final String LINE = "rollout start --roll 31 --truncate 3 --trials 72 --threads 1 --plays 8/5,6/5"
            + " --plays 24/20 --plays 13/9 --plays 8/4 --plays 6/2 --plays 24/23,13/10 --plays 13/10,6/5 --plays 24/21,6/5"
            + " --net " + TestNet.path();

    @TempDir
    Path folder;

    private static Run limited(int kilobytes, String line) throws IOException, InterruptedException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String shell = "ulimit -f " + kilobytes + " && exec '" + java + "' -Xmx256m -XX:-UsePerfData -cp '"
                + System.getProperty("java.class.path") + "' org.pipwright.cli.Main " + line;
        Process process = new ProcessBuilder("bash", "-c", shell).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Run(process.waitFor(), out, err);
    }

    /** What was played is printed, the file is named, and what was kept before is still whole. */
    @Test
    void aRolloutIsPrintedThoughItCannotBeKept() throws Exception {
        Path file = folder.resolve("kept");
        Run whole = Run.of((LINE + " --save " + file).split(" "));
        assertEquals(0, whole.code());
        // With no game yet it has six tenths of that size.
        int most = (int) (Files.size(file) * 3 / 4 / 1024);
        Files.delete(file);
        Run run = limited(most, LINE + " --save " + file);
        assertTrue(Files.readString(file).contains("\ntrials 0\n"), "what there was before the disk was full");
        String problem = "pipwright: cannot write '" + file + "' (File too large)";
        List<String> lines = run.err().lines().toList();
        assertEquals(
                problem + ": what is printed is not in it, but what was kept before still is",
                lines.get(lines.size() - 1));
        assertEquals(2, run.code());
        assertEquals(whole.out(), run.out());
        assertEquals(
                whole.out(), Run.of((LINE + " --resume " + file).split(" ")).out());
    }

    /** Where not even the beginning can be written, nothing is computed. */
    @Test
    void aFileThatCannotBeBegunIsNamedAtOnce() throws Exception {
        Path file = folder.resolve("kept");
        Run run = limited(0, LINE.replace("--trials 72", "--trials 10000000") + " --save " + file);
        assertEquals(new Run(2, "", "pipwright: cannot use '" + file + "': File too large\n"), run);
    }
}
