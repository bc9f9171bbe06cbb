package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TablesCommandTest {
    private static final String READY = "one-sided table, 15 checkers on points 1 to 6: ready, 1.8 MiB\n"
            + "two-sided table, 6 checkers on points 1 to 6: ready, 13.0 MiB\n";

    @TempDir
    Path cache;

    private Run tables(String... args) {
        String[] all = new String[args.length + 3];
        all[0] = "tables";
        all[1] = "--cache";
        all[2] = cache.toString();
        System.arraycopy(args, 0, all, 3, args.length);
        return Run.of(all);
    }

    @Test
    void buildsChecksAndFindsDamage() throws IOException {
        Run first = tables();
        String folder = "folder " + cache + "\n";
        assertEquals(folder + READY, first.out());
        assertTrue(first.err().startsWith("building the one-sided table (15 checkers on 6 points), once ...\n"));
        assertEquals(new Run(0, folder + READY, ""), tables("--threads", "1"));
        Run checked = tables("--check");
        assertEquals(0, checked.code());
        assertEquals(
                folder + "one-sided table, 15 checkers on points 1 to 6: whole\n"
                        + "two-sided table, 6 checkers on points 1 to 6: whole\n",
                checked.out());
        Path file = cache.resolve("onesided-6x15-v1.table");
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length / 2] ^= 1;
        Files.write(file, bytes);
        Run damaged = tables("--check");
        assertEquals(2, damaged.code());
        assertEquals(
                "pipwright: the one-sided table, 15 checkers on points 1 to 6 is damaged (its content does not match its"
                        + " checksum): remove '" + file + "', it is then built again\n",
                damaged.err());
        Run again = tables();
        assertTrue(again.err().startsWith("pipwright: the table '" + file + "' is damaged"), again.err());
        assertEquals(0, tables("--check").code());
    }

    /** Where tables cannot be kept, asking for them fails; it takes no more than a line to say so. */
    @Test
    void whatCannotBeKeptIsAnError() throws IOException {
        Path file = Files.createFile(cache.resolve("file"));
        Run run = Run.of("tables", "--cache", file.toString());
        assertEquals(2, run.code());
        List<String> lines = run.err().lines().toList();
        assertEquals(
                "pipwright: the table cannot be kept in '" + file + "' (file already exists, " + file
                        + "): make room there, or name a folder of yours with --cache",
                lines.get(lines.size() - 1));
        assertEquals("folder " + file + "\n", run.out());
        assertEquals(
                1,
                lines.stream()
                        .filter(line -> line.startsWith("pipwright: ") && line.contains("kept"))
                        .count());
    }

    @ParameterizedTest
    @CsvSource({"--points,6", "--points,12", "--pairs,6", "--pairs,11", "--threads,0"})
    void sizesOutOfRangeAreRefused(String option, String value) {
        Run run = tables(option, value);
        assertEquals(2, run.code());
        assertTrue(run.err().startsWith("pipwright: " + option + " is " + value + ": use "), run.err());
    }
}
