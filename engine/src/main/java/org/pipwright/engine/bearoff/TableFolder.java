package org.pipwright.engine.bearoff;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Function;
import org.pipwright.engine.files.AtomicFile;

/**
 * The folder where tables are kept between runs. A table is opened by mapping its file; if there is none, or it is
 * damaged, it is built and written. Files appear whole or not at all, so any number of processes may do this at once:
 * each builds for itself, and the last file stays. A folder that cannot be written costs only the time of building.
 */
public final class TableFolder {
    /** Name of the environment variable that overrides the folder. */
    public static final String VARIABLE = "PIPWRIGHT_CACHE";

    private final Path folder;

    /**
     * A folder.
     *
     * @param folder made when first written to
     */
    public TableFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * The user's folder: {@value #VARIABLE} if set, else {@code pipwright} in {@code XDG_CACHE_HOME} (XDG Base Directory
     * Specification: an absolute path, else ignored), else in {@code .cache} of the home folder.
     *
     * @param environment the environment, as {@link System#getenv()} gives it
     * @return the folder
     */
    public static TableFolder ofUser(Map<String, String> environment) {
        String own = environment.getOrDefault(VARIABLE, "");
        if (!own.isBlank()) {
            return new TableFolder(Path.of(own));
        }
        String shared = environment.getOrDefault("XDG_CACHE_HOME", "");
        Path caches = shared.isBlank() || !Path.of(shared).isAbsolute()
                ? Path.of(System.getProperty("user.home"), ".cache")
                : Path.of(shared);
        return new TableFolder(caches.resolve("pipwright"));
    }

    /**
     * The folder itself.
     *
     * @return its path, which need not exist yet
     */
    public Path path() {
        return folder;
    }

    /**
     * The one-sided table of a size.
     *
     * @param index which arrangements
     * @param threads threads to build with
     * @param listener told what happens
     * @return the table, from its file or built
     */
    public OneSidedTable oneSided(SideIndex index, int threads, TableListener listener) {
        ByteBuffer content = open(
                TableKind.ONE_SIDED,
                index,
                progress -> OneSidedTable.build(index, threads, progress).content(),
                listener);
        return new OneSidedTable(index, content);
    }

    /**
     * The file of a one-sided table.
     *
     * @param index its size
     * @return the path, whether there is a file or not
     */
    public Path oneSidedFile(SideIndex index) {
        return folder.resolve(TableKind.ONE_SIDED.fileName(index));
    }

    /**
     * Checks a one-sided table's file against its checksums, whatever its size.
     *
     * @param index its size
     * @throws DamagedTableException if it is damaged
     * @throws IOException if it cannot be read, or there is none
     */
    public void checkOneSided(SideIndex index) throws IOException, DamagedTableException {
        TableFile.open(oneSidedFile(index), TableKind.ONE_SIDED, index, true);
    }

    private ByteBuffer open(
            TableKind kind, SideIndex index, Function<TableProgress, ByteBuffer> builder, TableListener listener) {
        Path file = folder.resolve(kind.fileName(index));
        try {
            return TableFile.open(file, kind, index, false);
        } catch (NoSuchFileException e) {
            // The first use.
        } catch (DamagedTableException e) {
            listener.note("the table '" + file + "' is damaged (" + e.getMessage() + "): building it again");
        } catch (IOException e) {
            listener.note("the table '" + file + "' cannot be read (" + reason(e) + "): building it again");
        }
        ByteBuffer content = builder.apply(listener.building(
                kind.title + " table (" + index.checkers() + " checkers on " + index.points() + " points)"));
        write(file, TableFile.header(kind, index, content), content, listener);
        return content;
    }

    private void write(Path file, ByteBuffer header, ByteBuffer content, TableListener listener) {
        try {
            Files.createDirectories(folder);
            AtomicFile.write(file, out -> {
                WritableByteChannel channel = Channels.newChannel(out);
                channel.write(header);
                channel.write(content.duplicate());
            });
        } catch (IOException e) {
            listener.note("the table cannot be kept in '" + folder + "' (" + reason(e)
                    + "), so it will be built at each use: name a folder of yours with --cache or " + VARIABLE);
        }
    }

    private static String reason(IOException e) {
        return e.getClass().getSimpleName().replace("Exception", "") + ": " + e.getMessage();
    }
}
