package org.pipwright.bench.kills;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/** One try: a subject is disturbed, then goes on to the end, and what it leaves is compared with that of an undisturbed one. */
final class Trial {
    private static final Duration LONGEST = Duration.ofMinutes(5);

    /** How long after the undisturbed one a command may wait for room before it gets some. */
    private static final long WAITING_MILLIS = 3_000;

    private static final int USER_ERROR = 2;

    private final Subject subject;
    private final Undisturbed undisturbed;
    private final Launcher launcher;
    private final SplittableRandom random;
    private boolean writing;

    Trial(Subject subject, Undisturbed undisturbed, Launcher launcher, SplittableRandom random) {
        this.subject = subject;
        this.undisturbed = undisturbed;
        this.launcher = launcher;
        this.random = random;
    }

    /** Whether the signal came while a file was being written. */
    boolean writing() {
        return writing;
    }

    /**
     * Does it.
     *
     * @param scratch a folder of its own
     * @return what was lost, in a line; empty if nothing
     */
    Optional<String> of(Harm harm, Path scratch) throws IOException {
        if (harm == Harm.READ_ONLY) {
            return readOnly(scratch);
        }
        if (harm.isFullDisk()) {
            return full(harm, scratch);
        }
        Path folder = Files.createDirectories(scratch);
        return harm == Harm.TWICE ? twice(folder) : stopped(harm, folder);
    }

    /** A signal at a random moment; every other time not before a file is being written. */
    private Optional<String> stopped(Harm harm, Path folder) throws IOException {
        Work work = subject.start(launcher, folder, false);
        try {
            work.await(Duration.ofMillis(random.nextLong(undisturbed.millis() + 1)));
            if (random.nextBoolean()) {
                while (work.isAlive() && !isWriting(folder)) {
                    Thread.onSpinWait();
                }
            }
            writing = work.isAlive() && isWriting(folder);
            work.send(harm.signal());
            if (!work.await(LONGEST)) {
                return Optional.of("does not end");
            }
        } finally {
            work.end();
        }
        return complaint(work).or(() -> goneOn(folder, work));
    }

    private static boolean isWriting(Path folder) {
        try (Stream<Path> files = Files.walk(folder, 2)) {
            return files.anyMatch(file -> file.toString().endsWith(".part"));
        } catch (IOException | java.io.UncheckedIOException e) {
            // What is listed may go meanwhile.
            return false;
        }
    }

    private Optional<String> full(Harm harm, Path scratch) throws IOException {
        try (Disk disk = new Disk(scratch, harm.room(undisturbed.peak()))) {
            Path folder = Files.createDirectory(disk.folder().resolve("work"));
            Work work = subject.start(launcher, folder, false);
            try {
                boolean waits = !work.await(Duration.ofMillis(undisturbed.millis() + WAITING_MILLIS));
                disk.resize(4 * undisturbed.peak() + (64L << 20));
                if (waits && !work.await(LONGEST)) {
                    return Optional.of("does not end with room");
                }
            } finally {
                work.end();
            }
            return complaint(work).or(() -> goneOn(folder, work));
        }
    }

    private Optional<String> readOnly(Path scratch) throws IOException {
        try (Disk disk = new Disk(scratch.resolve("cache"), 64L << 20)) {
            disk.makeReadOnly();
            Path folder = subject.needsCache() ? disk.folder() : Files.createDirectories(scratch.resolve("work"));
            Work work = subject.start(launcher.withCache(disk.folder()), folder, false);
            try {
                if (!work.await(LONGEST)) {
                    return Optional.of("does not end");
                }
            } finally {
                work.end();
            }
            if (subject.needsCache()) {
                boolean told = work.code() == USER_ERROR
                        && work.err()
                                        .lines()
                                        .filter(line -> line.startsWith("pipwright: "))
                                        .count()
                                == 1;
                return told ? complaint(work) : Optional.of("exit code " + work.code() + ": " + work.err());
            }
            return complaint(work).or(() -> different(folder, work));
        }
    }

    private Optional<String> twice(Path folder) throws IOException {
        List<Work> works = List.of(subject.start(launcher, folder, false), subject.start(launcher, folder, false));
        try {
            for (Work work : works) {
                if (!work.await(LONGEST)) {
                    return Optional.of("does not end");
                }
            }
        } finally {
            works.forEach(Work::end);
        }
        Optional<Work> done = works.stream().filter(Work::done).findFirst();
        for (Work work : works) {
            if (!work.done() && (work.code() != USER_ERROR || done.isEmpty())) {
                return Optional.of("exit code " + work.code() + ": " + work.err());
            }
        }
        return complaint(works.get(0))
                .or(() -> complaint(works.get(1)))
                .or(() -> different(folder, done.orElseThrow()));
    }

    /** Goes on from what was kept until the command is done. */
    private Optional<String> goneOn(Path folder, Work disturbed) {
        try {
            if (disturbed.done()) {
                return different(folder, disturbed);
            }
            Work work = subject.start(launcher, folder, subject.kept(folder));
            try {
                if (!work.await(LONGEST)) {
                    return Optional.of("does not end when it goes on");
                }
            } finally {
                work.end();
            }
            if (!work.done()) {
                return Optional.of("does not go on, exit code " + work.code() + ": " + work.err());
            }
            return complaint(work).or(() -> different(folder, work));
        } catch (IOException e) {
            return Optional.of(e.toString());
        }
    }

    private Optional<String> different(Path folder, Work done) {
        try {
            return subject.bits(folder, done).equals(undisturbed.bits())
                    ? Optional.empty()
                    : Optional.of("other bits than undisturbed");
        } catch (IOException | RuntimeException e) {
            return Optional.of(e.toString());
        }
    }

    private static Optional<String> complaint(Work work) {
        return work.complaints().stream().findFirst();
    }
}
