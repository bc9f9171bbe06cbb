package org.pipwright.cli.batch;

import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.position.InvalidPositionException;

/** A file of positions, one a line, each perhaps with a roll, as batches read them. */
public final class PositionFile {
    private PositionFile() {}

    /**
     * A line that says something.
     *
     * @param number of the line, from 1
     * @param request what it says
     */
    public record Entry(long number, Request request) {}

    /**
     * Reads a whole file.
     *
     * @param file its name
     * @return its positions in order; blank lines and comments are passed over
     * @throws UserError if it cannot be read, or a line is no position
     */
    public static List<Entry> read(String file) {
        List<Entry> entries = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        try (InputStream in = new FileInputStream(file)) {
            LineReader lines = new LineReader(in);
            for (Line line = lines.read(); line != null; line = lines.read()) {
                try {
                    entries.add(new Entry(line.number(), request(line)));
                } catch (UserError | InvalidPositionException e) {
                    faults.add("line " + line.number() + ": " + e.getMessage());
                }
            }
        } catch (IOException e) {
            throw new UserError("cannot read '" + file + "': it is missing, a folder, or not yours to read");
        }
        if (!faults.isEmpty()) {
            String more = faults.size() > 1 ? "; " + (faults.size() - 1) + " more of its lines cannot be read" : "";
            throw new UserError(file + ", " + faults.get(0) + more);
        }
        return entries;
    }

    private static Request request(Line line) {
        if (line.text() == null) {
            throw new UserError("longer than " + LineReader.LONGEST + " bytes: write one position a line");
        }
        return Request.parse(line.text(), true);
    }
}
