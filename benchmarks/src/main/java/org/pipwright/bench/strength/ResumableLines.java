package org.pipwright.bench.strength;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToIntFunction;

/**
 * A file of {@link JsonLines} that grows by a record at a time, each forced to disk, so that a run that was stopped goes on
 * where it was. A line that was cut short by the stop is dropped.
 *
 * @param <H> the header
 * @param <R> what follows it, each with a number of its own
 */
class ResumableLines<H, R> implements AutoCloseable {
    private final Path path;
    private final H header;
    private final Class<R> type;
    private final ToIntFunction<R> id;
    private final RandomAccessFile file;
    private final Set<Integer> done = new HashSet<>();

    /** Opens a file to go on with, or begins one. */
    ResumableLines(Path path, H header, Class<R> type, ToIntFunction<R> id) throws IOException {
        this.path = path;
        this.header = header;
        this.type = type;
        this.id = id;
        boolean begun = Files.exists(path) && Files.size(path) > 0;
        if (begun) {
            dropCutLine(path);
            begun = Files.size(path) > 0;
        }
        if (begun) {
            var content = JsonLines.read(path, headers(), type);
            if (!content.header().equals(header)) {
                throw new IllegalArgumentException("'" + path + "' was begun with other settings: " + content.header()
                        + "; use the same or another file");
            }
            content.records().forEach(record -> done.add(id.applyAsInt(record)));
        }
        file = new RandomAccessFile(path.toFile(), "rw");
        file.seek(file.length());
        if (!begun) {
            write(header);
        }
    }

    @SuppressWarnings("unchecked")
    private Class<H> headers() {
        return (Class<H>) header.getClass();
    }

    private static void dropCutLine(Path path) throws IOException {
        byte[] bytes = Files.readAllBytes(path);
        int end = bytes.length;
        while (end > 0 && bytes[end - 1] != '\n') {
            end--;
        }
        try (RandomAccessFile file = new RandomAccessFile(path.toFile(), "rw")) {
            file.setLength(end);
        }
    }

    boolean has(int id) {
        return done.contains(id);
    }

    void add(R record) throws IOException {
        write(record);
        done.add(id.applyAsInt(record));
    }

    /** Puts the records into the order of their numbers. Gives how many there are. */
    int sort() throws IOException {
        List<R> all = new ArrayList<>(JsonLines.read(path, headers(), type).records());
        all.sort(Comparator.comparingInt(id));
        JsonLines.write(path, header, all);
        return all.size();
    }

    private void write(Object record) throws IOException {
        file.write(JsonLines.line(record).getBytes(StandardCharsets.UTF_8));
        file.getFD().sync();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
