package org.pipwright.cli.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.files.WholeFile;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.InvalidRecordException;
import org.pipwright.engine.record.RecordCheck;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.SgfText;
import org.pipwright.engine.text.Excerpt;

/** Records from files and to files; the name says which format. */
final class RecordFiles {
    /** A long match has some hundred kilobytes. */
    private static final int MAX_BYTES = 64 << 20;

    private RecordFiles() {}

    private static boolean sgf(String file) {
        return file.toLowerCase(Locale.ROOT).endsWith(".sgf");
    }

    private static Path path(String file) {
        try {
            return Path.of(file);
        } catch (InvalidPathException e) {
            throw new UserError("'" + Excerpt.of(file) + "' is not a file name: " + e.getReason());
        }
    }

    /** The record of a file; its mistakes are the user's. */
    static GameRecord read(String file) {
        try {
            String text = text(file);
            return sgf(file) ? SgfText.parse(text) : RecordText.parse(text);
        } catch (InvalidRecordException e) {
            throw new UserError(file + ", " + e.getMessage());
        }
    }

    /** The record of a file, or all mistakes in it; of an SGF file the first. */
    static RecordCheck check(String file) {
        String text = text(file);
        if (!sgf(file)) {
            return RecordCheck.of(text);
        }
        try {
            GameRecord record = SgfText.parse(text);
            return new RecordCheck(Optional.of(record.heading()), Optional.of(record), List.of());
        } catch (InvalidRecordException e) {
            return new RecordCheck(
                    Optional.empty(), Optional.empty(), List.of(new RecordCheck.Fault(e, Optional.empty())));
        }
    }

    /** A mistake as the user's. */
    static UserError fault(String file, RecordCheck.Fault fault) {
        return new UserError(file + ", " + fault.error().getMessage());
    }

    /** Refuses a record in which nothing has been played. */
    static void requireTurns(String file, GameRecord record) {
        if (record.games().stream().allMatch(game -> game.entries().isEmpty())) {
            throw new UserError("'" + file + "' has no game yet: there is nothing to review");
        }
    }

    private static String text(String file) {
        Path path = path(file);
        try {
            if (Files.isDirectory(path)) {
                throw new UserError("'" + file + "' is a folder: name the record in it");
            }
            return WholeFile.text(path, MAX_BYTES);
        } catch (CharacterCodingException e) {
            throw new UserError("'" + file + "' is not text in UTF-8: save it as UTF-8");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes a record. */
    static void write(GameRecord record, String file) {
        Path path = OutputFile.checked(file);
        if (sgf(file) && record.games().isEmpty()) {
            throw new UserError("the record has no game: an SGF file needs one");
        }
        byte[] bytes = (sgf(file) ? SgfText.print(record) : RecordText.print(record)).getBytes(StandardCharsets.UTF_8);
        OutputFile.write(path, bytes);
    }
}
