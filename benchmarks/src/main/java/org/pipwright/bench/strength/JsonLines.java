package org.pipwright.bench.strength;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.files.AtomicFile;

/** Files of one JSON object a line: a header that says where it all comes from, then records of one kind. */
final class JsonLines {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private JsonLines() {}

    /** A header and what follows it. */
    record Content<H, R>(H header, List<R> records) {}

    static <H, R> Content<H, R> read(Path file, Class<H> header, Class<R> record) throws IOException {
        if (!Files.exists(file)) {
            throw new IllegalArgumentException("no file '" + file + "': check the path");
        }
        List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("'" + file + "' is empty");
        }
        List<R> records = new ArrayList<>();
        for (int i = 1; i < lines.size(); i++) {
            records.add(parse(lines.get(i), record, file, i + 1));
        }
        return new Content<>(parse(lines.get(0), header, file, 1), records);
    }

    private static <T> T parse(String line, Class<T> type, Path file, int number) {
        try {
            return MAPPER.readValue(line, type);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("'" + file + "' line " + number + ": " + e.getOriginalMessage());
        }
    }

    static void write(Path file, Object header, List<?> records) throws IOException {
        AtomicFile.write(file, out -> {
            out.write(line(header).getBytes(StandardCharsets.UTF_8));
            for (Object record : records) {
                out.write(line(record).getBytes(StandardCharsets.UTF_8));
            }
        });
    }

    static String line(Object value) throws IOException {
        return MAPPER.writeValueAsString(value) + "\n";
    }
}
