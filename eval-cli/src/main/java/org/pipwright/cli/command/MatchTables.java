package org.pipwright.cli.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.files.WholeFile;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTableCsv;
import org.pipwright.engine.matchtable.ShippedMatchTable;

/** Match tables by their files. */
final class MatchTables {
    /** A table to 64 points away has 40 kilobytes. */
    private static final int MAX_BYTES = 1 << 20;

    private MatchTables() {}

    /** The table of a file, or without one that which comes with Pipwright. */
    static MatchTable read(Path file) {
        return file == null ? ShippedMatchTable.load() : MatchTableCsv.parse(text(file));
    }

    /** What a file has. */
    static String text(Path file) {
        try {
            return WholeFile.text(file, MAX_BYTES);
        } catch (CharacterCodingException e) {
            throw new UserError("'" + file + "' is not text in UTF-8: give a CSV file");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
