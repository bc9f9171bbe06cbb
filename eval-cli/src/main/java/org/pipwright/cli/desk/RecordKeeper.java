package org.pipwright.cli.desk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.SgfText;

/**
 * Keeps a record on disk while it is played, as text and as SGF. Each file is replaced as a whole, so that a crash leaves it
 * as it was before the turn at hand.
 */
final class RecordKeeper {
    private final Path text;
    private final Path sgf;

    /**
     * A keeper.
     *
     * @param folder where to
     * @param name name of the files without their endings
     */
    RecordKeeper(Path folder, String name) {
        text = text(folder, name);
        sgf = folder.resolve(name + ".sgf");
    }

    /** Where a record of such a name is kept as text. */
    static Path text(Path folder, String name) {
        return folder.resolve(name + ".txt");
    }

    /** Writes both files; throws if that fails, and each file is then whole, new or old. */
    void keep(GameRecord record) throws IOException {
        write(text, RecordText.print(record));
        write(sgf, SgfText.print(record));
    }

    private static void write(Path file, String content) throws IOException {
        AtomicFile.write(file, out -> out.write(content.getBytes(StandardCharsets.UTF_8)));
    }

    /** The file of the record as text. */
    Path file() {
        return text;
    }
}
