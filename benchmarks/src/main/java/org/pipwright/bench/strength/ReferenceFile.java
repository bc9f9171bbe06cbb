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

/**
 * A file of references that grows by a line at a time, each forced to disk, so that a run that was stopped goes on where
 * it was. A line that was cut short by the stop is dropped.
 */
final class ReferenceFile implements AutoCloseable {
    private final Path path;
    private final ReferenceHeader header;
    private final RandomAccessFile file;
    private final Set<Integer> done = new HashSet<>();

    /** Opens a file to go on with, or begins one. */
    ReferenceFile(Path path, ReferenceHeader header) throws IOException {
        this.path = path;
        this.header = header;
        boolean begun = Files.exists(path) && Files.size(path) > 0;
        if (begun) {
            dropCutLine(path);
            begun = Files.size(path) > 0;
        }
        if (begun) {
            var content = JsonLines.read(path, ReferenceHeader.class, Reference.class);
            if (!content.header().equals(header)) {
                throw new IllegalArgumentException("'" + path + "' was begun with other settings: " + content.header()
                        + "; use the same or another file");
            }
            content.records().forEach(reference -> done.add(reference.id()));
        }
        file = new RandomAccessFile(path.toFile(), "rw");
        file.seek(file.length());
        if (!begun) {
            write(header);
        }
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

    void add(Reference reference) throws IOException {
        write(reference);
        done.add(reference.id());
    }

    /** Puts the references into the order of their decisions. Gives how many there are. */
    int sort() throws IOException {
        List<Reference> all = new ArrayList<>(
                JsonLines.read(path, ReferenceHeader.class, Reference.class).records());
        all.sort(Comparator.comparingInt(Reference::id));
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
