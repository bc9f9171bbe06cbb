package org.pipwright.engine.bearoff;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.files.PartFile;
import org.pipwright.engine.files.Reason;

/**
 * The folder where tables are kept between runs. A table is opened by mapping its file; if there is none, or it is
 * damaged, it is built and written. Files appear whole or not at all, so any number of processes may do this at once:
 * each builds its own, and the last one written stays. A folder that cannot be written costs only the time of building.
 */
@PublicApi
public final class TableFolder {
    /** Name of the environment variable that overrides the folder. */
    public static final String VARIABLE = "PIPWRIGHT_CACHE";

    /** Contents up to this many bytes are built in memory. */
    private static final long IN_MEMORY = 256L << 20;

    private static final Pattern SIZES = Pattern.compile("[a-z]+-([1-9]\\d?)x([1-9]\\d?)-v\\d+\\.table");

    private final Path folder;
    private final boolean keeping;
    private final AtomicBoolean tidied = new AtomicBoolean();

    /** Files whose contents have been compared with their checksums: once is enough. */
    private final Set<Path> checked = ConcurrentHashMap.newKeySet();

    /**
     * A folder.
     *
     * @param folder made when first written to
     */
    public TableFolder(Path folder) {
        this(folder, false);
    }

    private TableFolder(Path folder, boolean keeping) {
        this.folder = folder;
        this.keeping = keeping;
    }

    /**
     * The same folder where tables have to be kept: not being able to write one that was built is an error.
     *
     * @return a folder that throws {@link UncheckedIOException}, with the reason, instead of noting it
     */
    public TableFolder keeping() {
        return new TableFolder(folder, true);
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
            tidy();
            return TableFile.create(
                    file(TableKind.TWO_SIDED, index),
                    TableKind.TWO_SIDED,
                    index,
                    size,
                    content -> TwoSidedTable.fill(
                            index, content, threads, listener.building(title(TableKind.TWO_SIDED, index))));
        } catch (IOException e) {
            throw notKept(e);
        }
    }

    private UncheckedIOException notKept(IOException e) {
        return new UncheckedIOException("the table cannot be kept in '" + folder + "' (" + Reason.of(e) + ")", e);
    }

    /** Removes what killed builds have left behind; once is enough. */
    private void tidy() {
        if (!tidied.getAndSet(true) && Files.isDirectory(folder)) {
            PartFile.removeAbandoned(folder);
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
     * A table that the folder has a file of.
     *
     * @param kind which kind
     * @param index its size
     */
    public record Entry(TableKind kind, SideIndex index) {}

    /**
     * The tables that the folder has files of.
     *
     * @return by name; the files may be damaged
     * @throws IOException if the folder cannot be read
     */
    public List<Entry> entries() throws IOException {
        List<Entry> entries = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.list(folder)) {
                files.map(file -> file.getFileName().toString()).sorted().forEach(name -> add(name, entries));
            }
        }
        return entries;
    }

    private static void add(String name, List<Entry> entries) {
        Matcher sizes = SIZES.matcher(name);
        if (sizes.matches()) {
            int points = Integer.parseInt(sizes.group(1));
            int checkers = Integer.parseInt(sizes.group(2));
            for (TableKind kind : TableKind.values()) {
                if (SideIndex.fits(points, checkers) && name.equals(kind.fileName(points, checkers))) {
                    entries.add(new Entry(kind, new SideIndex(points, checkers)));
                }
            }
        }
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
        Path file = file(kind, index);
        TableFile.open(file, kind, index, true);
        checked.add(file);
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
        tidy();
        Path file = file(kind, index);
        try {
            ByteBuffer content = TableFile.open(file, kind, index, !checked.contains(file));
            checked.add(file);
            return content;
        } catch (NoSuchFileException e) {
            return null;
        } catch (DamagedTableException e) {
            listener.note("the table '" + file + "' is damaged (" + e.getMessage() + "): building it again");
        } catch (IOException e) {
            listener.note("the table '" + file + "' cannot be read (" + Reason.of(e) + "): building it again");
        }
        return null;
    }

    private void write(Path file, ByteBuffer header, ByteBuffer content, TableListener listener) {
        try {
            Files.createDirectories(folder);
            try (PartFile part = PartFile.of(file).discardedAtExit()) {
                for (ByteBuffer bytes : List.of(header, content.duplicate())) {
                    while (bytes.hasRemaining()) {
                        part.channel().write(bytes);
                    }
                }
                part.channel().force(true);
                part.become(file);
            }
        } catch (IOException e) {
            if (keeping) {
                throw notKept(e);
            }
            listener.note("the table cannot be kept in '" + folder + "' (" + Reason.of(e)
                    + "), so it will be built at each use: name a folder of yours with --cache or " + VARIABLE);
        }
    }
}
