package org.pipwright.bench.kills;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Small programs that keep a count on disk: a sound one loses nothing, and what is wrong with others is found. */
@EnabledOnOs(OS.LINUX)
@EnabledIfSystemProperty(
        named = "pipwright.test.complete",
        matches = "true",
        disabledReason = "kills small programs again and again: -Dpipwright.test.complete=true")
class TrialTest {
    private static final int TRIES = 4;

    /** Counts to 20 and writes the sum so far; what is written goes beside the file first, and takes two pages. */
    private static final String SOUND = """
            #!/usr/bin/env bash
            file=$1
            read -r n sum rest 2> /dev/null < "$file" || { n=0; sum=0; }
            while [ "$n" -lt 20 ]; do
                n=$((n + 1))
                sum=$((sum + n))
                until printf '%s %s %8000s\\n' "$n" "$sum" x > "$file.$$.part" 2> /dev/null; do sleep 0.05; done
                mv "$file.$$.part" "$file"
                sleep 0.01
            done
            """;

    @TempDir
    Path folder;

    private final SplittableRandom random = new SplittableRandom(4);

    /** The count, which goes on by itself. */
    private record Count() implements Subject {
        @Override
        public String name() {
            return "count";
        }

        @Override
        public boolean kept(Path folder) {
            return Files.exists(folder.resolve("count"));
        }

        @Override
        public List<String> words(Path folder, boolean again) {
            return List.of(folder.resolve("count").toString());
        }

        @Override
        public String bits(Path folder, Work done) throws IOException {
            return Files.readString(folder.resolve("count"));
        }
    }

    private Launcher program(String text) throws IOException {
        Path program = Files.writeString(folder.resolve("program"), text);
        assertTrue(program.toFile().setExecutable(true));
        Files.createDirectories(folder.resolve("logs"));
        return new Launcher(program, folder.resolve("logs"), folder.resolve("cache"));
    }

    /** What is lost in some tries. */
    private Set<String> lost(String program, Harm harm) throws IOException {
        Path whole = folder.resolve("whole");
        Undisturbed undisturbed = Undisturbed.of(new Count(), program(program), whole, harm.needsDisk());
        Set<String> lost = new TreeSet<>();
        // A disk fills at the same place each time.
        int tries = harm.isSignal() ? TRIES : 1;
        for (int i = 0; i < tries; i++) {
            new Trial(new Count(), undisturbed, program(program), random)
                    .of(harm, folder.resolve("try" + i))
                    .ifPresent(lost::add);
        }
        return lost;
    }

    @ParameterizedTest
    @EnumSource(Harm.class)
    void aSoundProgramLosesNothing(Harm harm) throws IOException {
        Assumptions.assumeTrue(!harm.needsDisk() || Disk.isPossible(folder), "mounts need root");
        assertEquals(Set.of(), lost(SOUND, harm));
    }

    /** The count is on disk before the sum. */
    @Test
    void whatIsCountedTwiceIsFound() throws IOException {
        String program = SOUND.replace("    sum=$((sum + n))\n", "").replace("    sleep 0.01\n", """
                    sleep 0.01
                    sum=$((sum + n))
                """);
        assertEquals(Set.of("other bits than undisturbed"), lost(program, Harm.KILL));
    }

    @Test
    void aComplaintIsALoss() throws IOException {
        Set<String> lost =
                lost(SOUND.replace("file=$1", "file=$1\ntrap 'echo it itself failed >&2; exit 1' TERM"), Harm.TERM);
        assertEquals(Set.of("it itself failed"), lost);
    }

    @Test
    void oneThatEndsWhenItCannotGoOnIsFound() throws IOException {
        String program = SOUND.replace("file=$1", "file=$1\n[ -e \"$file\" ] && echo no >&2 && exit 2");
        Set<String> lost = lost(program, Harm.KILL);
        assertEquals(Set.of("does not go on, exit code 2: no\n"), lost);
    }

    @Test
    void theTableCountsTriesWritesAndLosses() {
        Tally tally = new Tally();
        tally.add(new Count(), Harm.KILL, true, Optional.empty());
        tally.add(new Count(), Harm.KILL, false, Optional.of("two\nlines"));
        tally.add(new Count(), Harm.TWICE, false, Optional.empty());
        assertEquals(
                List.of(
                        "| command | kill -9 | SIGTERM | SIGINT | disk full at the first write | in the middle"
                                + " | at the last write | read-only cache | two at once |",
                        "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |",
                        "| count | 2 (1) / 1 | - | - | - | - | - | - | 1 / 0 |"),
                tally.lines());
        assertEquals(List.of("count, kill -9: two | lines"), tally.losses());
        assertEquals(3, tally.tries());
        assertEquals(1, tally.lost());
    }
}
