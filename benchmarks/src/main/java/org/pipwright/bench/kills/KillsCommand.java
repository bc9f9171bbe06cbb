package org.pipwright.bench.kills;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.Within;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Disturbs commands at work again and again, in turns, and counts what is lost. */
@Command(
        name = "kills",
        description =
                "Kills, interrupts and starves commands while they work, lets them go on, and compares what they leave"
                        + " with what undisturbed ones do. Full disks need root, since small ones are mounted in memory.")
public final class KillsCommand extends BenchCommand {
    @Option(names = "--seconds", paramLabel = "N", description = "About how long to go on (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 1_000_000)
    private int seconds = 600;

    @Option(
            names = "--only",
            paramLabel = "WORD",
            description = "Only commands with this in their name, such as train, rollout, desk.")
    private String only = "";

    @Mixin
    private SeedOption seed;

    @Override
    protected void run() throws IOException {
        Path scratch = Files.createTempDirectory("pipwright-kills");
        try {
            run(scratch);
        } finally {
            remove(scratch);
        }
    }

    private void run(Path scratch) throws IOException {
        Launcher launcher = new Launcher(
                Path.of("pipwright").toAbsolutePath(),
                Files.createDirectory(scratch.resolve("logs")),
                Files.createDirectory(scratch.resolve("cache")));
        boolean disks = Disk.isPossible(scratch);
        Map<Subject, Undisturbed> subjects = undisturbed(scratch, launcher, disks);
        long until = System.nanoTime() + 1_000_000_000L * seconds;
        SplittableRandom random = new SplittableRandom(seed.value());
        Tally tally = new Tally();
        for (int round = 0; System.nanoTime() < until; round++) {
            for (Harm harm : Harm.values()) {
                // A disk fills at the same place each time, so that once in four rounds is enough.
                if ((disks || !harm.needsDisk()) && (harm.isSignal() || round % 4 == 0)) {
                    for (Map.Entry<Subject, Undisturbed> entry : subjects.entrySet()) {
                        if (System.nanoTime() < until) {
                            Trial trial = new Trial(entry.getKey(), entry.getValue(), launcher, random);
                            disturb(trial, entry.getKey(), harm, tally, scratch.resolve("try-" + tally.tries()));
                        }
                    }
                }
            }
        }
        tally.lines().forEach(out()::println);
        out().printf(Locale.ROOT, "%n%d tries, %d losses%n", tally.tries(), tally.lost());
        tally.losses().forEach(out()::println);
    }

    private void disturb(Trial trial, Subject subject, Harm harm, Tally tally, Path folder) throws IOException {
        Optional<String> lost = trial.of(harm, folder);
        tally.add(subject, harm, trial.writing(), lost);
        lost.ifPresent(what -> out().println("lost: " + subject.name() + ", " + harm.title()));
        out().flush();
        remove(folder);
    }

    private Map<Subject, Undisturbed> undisturbed(Path scratch, Launcher launcher, boolean disks) throws IOException {
        List<Subject> all = Subjects.all(scratch).stream()
                .filter(subject -> subject.name().contains(only))
                .toList();
        if (all.isEmpty()) {
            throw new IllegalArgumentException("no command has '" + only + "' in its name");
        }
        Map<Subject, Undisturbed> undisturbed = new LinkedHashMap<>();
        for (Subject subject : all) {
            // The first one may build, and makes archives of classes and tables.
            Undisturbed.of(subject, launcher, scratch.resolve("first " + undisturbed.size()), disks);
            Undisturbed one = Undisturbed.of(subject, launcher, scratch.resolve("whole " + undisturbed.size()), disks);
            undisturbed.put(subject, one);
            out().printf(
                            Locale.ROOT,
                            "%s: %.1f s undisturbed, %,d KiB at most%n",
                            subject.name(),
                            one.millis() / 1e3,
                            one.peak() / 1024);
        }
        out().println();
        out().flush();
        return undisturbed;
    }

    private static void remove(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
