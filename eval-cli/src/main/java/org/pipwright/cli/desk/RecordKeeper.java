package org.pipwright.cli.desk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
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
    /** Highest number in a name. */
    private static final int MOST = 9999;

    private final Path folder;
    private final String stem;
    private final int number;
    private boolean named;
    private volatile String name;

    private RecordKeeper(Path folder, String stem, int number, boolean named) {
        this.folder = folder;
        this.stem = stem;
        this.number = number;
        this.named = named;
        name = named ? stem : stem + number;
    }

    /**
     * A keeper that goes on with files, or makes them.
     *
     * @param folder where to
     * @param name name of the files without their endings
     */
    RecordKeeper(Path folder, String name) {
        this(folder, name, 0, true);
    }

    /**
     * A keeper of a new record, which never takes the place of another desk's: its files get the next number that is free.
     *
     * @param folder where to
     * @param stem name of the files up to the number
     * @param number the first to try
     */
    static RecordKeeper begun(Path folder, String stem, int number) {
        return new RecordKeeper(folder, stem, number, false);
    }

    /** Where a record of such a name is kept as text. */
    static Path text(Path folder, String name) {
        return folder.resolve(name + ".txt");
    }

    /** Writes both files; throws if that fails, and each file is then whole, new or old. */
    void keep(GameRecord record) throws IOException {
        if (!named) {
            takeName();
        }
        write(file(), RecordText.print(record));
        write(folder.resolve(name + ".sgf"), SgfText.print(record));
    }

    private void takeName() throws IOException {
        for (int n = number; !named; n++) {
            try {
                Files.createFile(text(folder, stem + n));
                name = stem + n;
                named = true;
            } catch (FileAlreadyExistsException e) {
                if (n >= MOST) {
                    throw e;
                }
            }
        }
    }

    private static void write(Path file, String content) throws IOException {
        AtomicFile.write(file, out -> out.write(content.getBytes(StandardCharsets.UTF_8)));
    }

    /** The file of the record as text. */
    Path file() {
        return text(folder, name);
    }
}
