package org.pipwright.engine.bearoff;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Supplier;
import org.pipwright.engine.files.AtomicFile;

/**
 * The folder where tables are kept between runs. A table is opened by mapping its file; if there is none, or it is
 * damaged, it is built and written. Files appear whole or not at all, so any number of processes may do this at once:
 * each builds for itself, and the last file stays. A folder that cannot be written costs only the time of building.
 */
public final class TableFolder {
    /** Name of the environment variable that overrides the folder. */
    public static final String VARIABLE = "PIPWRIGHT_CACHE";

    /** Contents up to this many bytes are built in memory. */
    private static final long IN_MEMORY = 256L << 20;

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
     * @param threads threads to build with, at least 1
     * @param listener told what happens
     * @return the table, from its file or built
     */
    public OneSidedTable oneSided(SideIndex index, int threads, TableListener listener) {
        Supplier<ByteBuffer> builder = () -> {
            TableProgress progress = listener.building(title(TableKind.ONE_SIDED, index));
            return OneSidedTable.build(index, threads, progress).content();
        };
        return new OneSidedTable(index, open(TableKind.ONE_SIDED, index, builder, listener));
    }

    /**
     * The two-sided table of a size. One of more than 256 MiB is built in its file, and needs a folder that can be
     * written.
     *
     * @param index arrangements of a side
     * @param threads threads to build with, at least 1
     * @param listener told what happens
     * @return the table, from its file or built
     * @throws UncheckedIOException if a table too large for memory cannot be written
     */
    public TwoSidedTable twoSided(SideIndex index, int threads, TableListener listener) {
        TableKind kind = TableKind.TWO_SIDED;
        long size = TwoSidedTable.contentSize(index);
        if (size <= IN_MEMORY) {
            Supplier<ByteBuffer> builder =
                    () -> TwoSidedTable.build(index, threads, listener.building(title(kind, index)))
                            .content();
            return new TwoSidedTable(index, open(kind, index, builder, listener));
        }
        ByteBuffer content = existing(kind, index, listener);
        if (content == null) {
            content = buildInFile(index, size, threads, listener);
        }
        return new TwoSidedTable(index, content);
    }

    private ByteBuffer buildInFile(SideIndex index, long size, int threads, TableListener listener) {
        try {
            Files.createDirectories(folder);
            return TableFile.create(
                    file(TableKind.TWO_SIDED, index),
                    TableKind.TWO_SIDED,
                    index,
                    size,
                    content -> TwoSidedTable.fill(
                            index, content, threads, listener.building(title(TableKind.TWO_SIDED, index))));
        } catch (IOException e) {
            throw new UncheckedIOException("the table cannot be written to '" + folder + "': " + reason(e), e);
        }
    }

    private static String title(TableKind kind, SideIndex index) {
        return kind.title + " table (" + index.checkers() + " checkers on " + index.points() + " points)";
    }

    /**
     * The file of a table.
     *
     * @param kind which kind
     * @param index its size
     * @return the path, whether there is a file or not
     */
    public Path file(TableKind kind, SideIndex index) {
        return folder.resolve(kind.fileName(index));
    }

    /**
     * The largest table in the folder that covers all that another one does.
     *
     * @param kind which kind
     * @param least the other one, which need not be there
     * @return its size; {@code least} if there is none larger
     */
    SideIndex largest(TableKind kind, SideIndex least) {
        SideIndex best = least;
        for (int points = least.points(); points <= 24; points++) {
            for (int checkers = least.checkers(); checkers <= 15; checkers++) {
                if (SideIndex.fits(points, checkers)) {
                    SideIndex index = new SideIndex(points, checkers);
                    if (index.size() > best.size() && Files.isReadable(file(kind, index))) {
                        best = index;
                    }
                }
            }
        }
        return best;
    }

    /**
     * Checks a table's file against its checksums, whatever its size.
     *
     * @param kind which kind
     * @param index its size
     * @throws DamagedTableException if it is damaged
     * @throws IOException if it cannot be read, or there is none
     */
    public void check(TableKind kind, SideIndex index) throws IOException, DamagedTableException {
        TableFile.open(file(kind, index), kind, index, true);
    }

    private ByteBuffer open(TableKind kind, SideIndex index, Supplier<ByteBuffer> builder, TableListener listener) {
        ByteBuffer content = existing(kind, index, listener);
        if (content == null) {
            content = builder.get();
            write(file(kind, index), TableFile.header(kind, index, content), content, listener);
        }
        return content;
    }

    /** The content of a table's file, or null if it has to be built. */
    private ByteBuffer existing(TableKind kind, SideIndex index, TableListener listener) {
        Path file = file(kind, index);
        try {
            return TableFile.open(file, kind, index, false);
        } catch (NoSuchFileException e) {
            return null;
        } catch (DamagedTableException e) {
            listener.note("the table '" + file + "' is damaged (" + e.getMessage() + "): building it again");
        } catch (IOException e) {
            listener.note("the table '" + file + "' cannot be read (" + reason(e) + "): building it again");
        }
        return null;
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
