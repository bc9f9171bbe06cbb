package org.pipwright.training.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.files.Reason;

/** What the folders of runs have in common, whatever trains in them. */
public final class RunFiles {
    private RunFiles() {}

    /**
     * Checks that no run is in a folder; the lock and what a killed process was writing do not count.
     *
     * @param folder a folder
     * @throws InvalidRunException if there is something in it
     * @throws IOException if it cannot be read
     */
    public static void requireEmpty(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            if (files.map(RunFiles::name).anyMatch(name -> !name.equals(RunLock.FILE) && !isPart(name))) {
                throw new InvalidRunException(
                        "'" + folder + "' is not empty: give --resume to go on with the run in it, or another folder");
            }
        }
    }

    /**
     * Removes what a killed process was writing; only the holder of the lock may do so.
     *
     * @param folder folder of a run
     * @throws InvalidRunException if that fails
     */
    public static void removeLeftovers(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, file -> isPart(name(file)))) {
            for (Path file : files) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new InvalidRunException("cannot use the folder '" + folder + "': " + Reason.of(e));
        }
    }

    private static String name(Path file) {
        return file.getFileName().toString();
    }

    /** Whether a file is one that a killed process was writing (see {@link AtomicFile}). */
    private static boolean isPart(String name) {
        return name.matches("\\..*\\.part");
    }

    /**
     * Writes a text file, all of it or nothing.
     *
     * @param file the file
     * @param text what it holds then
     * @throws IOException if it cannot be written; it is then as before
     */
    public static void write(Path file, String text) throws IOException {
        AtomicFile.write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }
}
