package org.pipwright.bench.kills;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;

/**
 * A run that nobody disturbed.
 *
 * @param bits what it left
 * @param millis how long it took
 * @param peak bytes on the disk when there were most; 0 if that cannot be known
 */
record Undisturbed(String bits, long millis, long peak) {
    private static final long ROOM = 1L << 30;
    private static final Duration LONGEST = Duration.ofMinutes(5);

    /** Lets a subject work; on a disk of its own if there can be one. */
    static Undisturbed of(Subject subject, Launcher launcher, Path folder, boolean disks) throws IOException {
        if (!disks) {
            return of(subject, launcher, Files.createDirectories(folder), null);
        }
        try (Disk disk = new Disk(folder, ROOM)) {
            return of(subject, launcher, Files.createDirectory(folder.resolve("work")), disk);
        }
    }

    private static Undisturbed of(Subject subject, Launcher launcher, Path folder, Disk disk) throws IOException {
        long began = System.nanoTime();
        long peak = 0;
        Work work = subject.start(launcher, folder, false);
        try {
            while (!work.await(Duration.ofMillis(2))) {
                peak = disk == null ? 0 : Math.max(peak, disk.used());
                if (System.nanoTime() - began > LONGEST.toNanos()) {
                    throw new IllegalArgumentException(subject.name() + " does not end");
                }
            }
        } finally {
            work.end();
        }
        long millis = (System.nanoTime() - began) / 1_000_000;
        if (!work.done()) {
            throw new IllegalArgumentException(
                    subject.name() + " fails undisturbed, exit code " + work.code() + ": " + work.err());
        }
        return new Undisturbed(subject.bits(folder, work), millis, peak);
    }
}
