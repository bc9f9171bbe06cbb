package org.pipwright.engine.reduced;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32C;
import java.util.zip.CheckedInputStream;
import java.util.zip.CheckedOutputStream;
import org.pipwright.engine.files.AtomicFile;

/**
 * Files that hold a solved game: the eight bytes {@value #MAGIC}, the number of checkers as a 32-bit integer, the equity
 * of every unfinished position as a 64-bit float in the order of {@link ReducedGame}, and the CRC-32C of all that in 64
 * bits; all big-endian. Best plays are found again on reading, which also proves that the equities solve the game.
 */
public final class ReducedTableFile {
    private static final String MAGIC = "pipwred1";

    /** A file whose equities miss those of the best plays by more is not accepted, in points per game. */
    private static final double MAX_RESIDUAL = 1e-6;

    private static final int BUFFER = 1 << 16;

    private ReducedTableFile() {}

    /**
     * Writes a table.
     *
     * @param file the file; its folder must exist
     * @param table the table
     * @throws IOException if writing fails; the file is then as before
     */
    public static void write(Path file, ReducedTable table) throws IOException {
        AtomicFile.write(file, out -> write(out, table));
    }

    private static void write(OutputStream raw, ReducedTable table) throws IOException {
        CRC32C sum = new CRC32C();
        DataOutputStream out = new DataOutputStream(new CheckedOutputStream(raw, sum));
        out.writeBytes(MAGIC);
        out.writeInt(table.game().checkers());
        for (int cell = 0; cell < table.game().cells(); cell++) {
            if (table.game().unfinished(cell)) {
                out.writeDouble(table.values()[cell]);
            }
        }
        out.writeLong(sum.getValue());
        out.flush();
    }

    /**
     * Reads a table and checks all of it: checksum, and that every equity is that of the best plays.
     *
     * @param file the file
     * @param game the game it should be of
     * @param threads threads for the check, at least 1
     * @return the table
     * @throws InvalidTableException if the file is damaged, of another game or does not solve it; one line says which
     * @throws IOException if reading fails
     */
    public static ReducedTable read(Path file, ReducedGame game, int threads) throws IOException {
        double[] values;
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file), BUFFER)) {
            values = values(in, file, game);
        } catch (EOFException e) {
            throw new InvalidTableException("'" + file + "' is cut short: delete it and solve again");
        }
        ReducedTable table = ReducedTable.of(game, values, threads);
        if (!(table.residual() <= MAX_RESIDUAL)) {
            throw new InvalidTableException("'" + file + "' does not solve the game, it is off by " + table.residual()
                    + " points: delete it and solve again");
        }
        return table;
    }

    private static double[] values(InputStream raw, Path file, ReducedGame game) throws IOException {
        CRC32C sum = new CRC32C();
        DataInputStream in = new DataInputStream(new CheckedInputStream(raw, sum));
        byte[] magic = in.readNBytes(MAGIC.length());
        if (!new String(magic, StandardCharsets.US_ASCII).equals(MAGIC)) {
            throw new InvalidTableException("'" + file + "' is not a table of a reduced game: name another file");
        }
        int checkers = in.readInt();
        if (checkers != game.checkers()) {
            throw new InvalidTableException(
                    "'" + file + "' is of the game with " + checkers + " checkers, not " + game.checkers());
        }
        double[] values = game.freshValues();
        for (int cell = 0; cell < values.length; cell++) {
            if (game.unfinished(cell)) {
                values[cell] = in.readDouble();
            }
        }
        long expected = sum.getValue();
        if (in.readLong() != expected || in.read() >= 0) {
            throw new InvalidTableException(
                    "'" + file + "' is damaged, its checksum is wrong: delete it and solve again");
        }
        return values;
    }
}
