package org.pipwright.engine.matchtable;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.BitSet;
import java.util.Optional;
import java.util.zip.CRC32C;
import org.pipwright.engine.files.PartFile;
import org.pipwright.engine.score.MatchScore;

/**
 * The file form of what has been solved at a score: 216 bytes of header, the pairs that are solved, their values. All
 * numbers are little-endian.
 *
 * <p>Header: 8 bytes {@code PIPENDIN}; ints: version, arrangements of a side, lanes of a pair, points that the first side
 * needs, those of the second, 1 in the Crawford game; 22 doubles, the chances to win the match that the values rest on; an
 * int: the CRC-32C (RFC 3720) of all before and after it but the next, which is zero. Then, for each arrangement of the
 * first side, a bit for each of the second; then, for each that has any bit, its row as {@link EndingLanes} has it.
 */
final class EndingFile {
    /** Version of this form and of how values are found. 1: the first. */
    private static final int VERSION = 1;

    private static final long MAGIC = 0x4E49444E45504950L;
    private static final int SUM_AT = 208;
    private static final int HEADER = 216;

    /** Largest stake of the chances: no match is longer. */
    private static final int MOST = 1024;

    private final ByteBuffer map;
    private final int arrangements;
    private final int rowLength;

    /** Where the row of an arrangement begins; 0 if there is none. */
    private final int[] rowAt;

    private EndingFile(ByteBuffer map, int arrangements, int width) {
        this.map = map;
        this.arrangements = arrangements;
        rowLength = arrangements * width;
        rowAt = new int[arrangements];
    }

    /** Bytes of the bits of one arrangement. */
    private static int bits(int arrangements) {
        return (arrangements + Long.SIZE - 1) / Long.SIZE * Long.BYTES;
    }

    private static ByteBuffer header(EndingCubes cubes, int arrangements, int width) {
        ByteBuffer header = ByteBuffer.allocate(HEADER).order(ByteOrder.LITTLE_ENDIAN);
        MatchScore score = cubes.score();
        header.putLong(MAGIC).putInt(VERSION).putInt(arrangements).putInt(width);
        header.putInt(score.mine()).putInt(score.theirs()).putInt(score.crawford() ? 1 : 0);
        for (int points = 1; points <= MOST; points *= 2) {
            header.putDouble(cubes.after(points)).putDouble(cubes.after(-points));
        }
        return header;
    }

    private static int sum(ByteBuffer header, ByteBuffer rest) {
        CRC32C sum = new CRC32C();
        sum.update(header.duplicate().position(0).limit(SUM_AT));
        sum.update(rest.duplicate());
        return (int) sum.getValue();
    }

    /**
     * Opens a file.
     *
     * @param file where it is
     * @param cubes those of the score
     * @param arrangements of a side
     * @param width lanes of a pair
     * @return what it holds; empty if that is not whole, of another version, or rests on other chances
     * @throws IOException if it cannot be read, or there is none
     */
    static Optional<EndingFile> open(Path file, EndingCubes cubes, int arrangements, int width) throws IOException {
        ByteBuffer map;
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            if (channel.size() < HEADER || channel.size() > Integer.MAX_VALUE) {
                return Optional.empty();
            }
            map = channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size()).order(ByteOrder.LITTLE_ENDIAN);
        }
        ByteBuffer header = header(cubes, arrangements, width);
        boolean whole = map.duplicate().limit(SUM_AT).equals(header.flip().limit(SUM_AT))
                && sum(header, map.duplicate().position(HEADER)) == map.getInt(SUM_AT);
        EndingFile opened = new EndingFile(map, arrangements, width);
        return whole && opened.place() ? Optional.of(opened) : Optional.empty();
    }

    /** Finds the rows; false if the file has another size than they take. */
    private boolean place() {
        long at = HEADER + (long) arrangements * bits(arrangements);
        if (at > map.capacity()) {
            return false;
        }
        for (int a = 0; a < arrangements; a++) {
            if (!solved(a).isEmpty()) {
                rowAt[a] = (int) at;
                at += (long) rowLength * Integer.BYTES;
                if (at > map.capacity()) {
                    return false;
                }
            }
        }
        return at == map.capacity();
    }

    /** What is solved of an arrangement of the first side. */
    BitSet solved(int a) {
        int size = bits(arrangements);
        return BitSet.valueOf(map.duplicate()
                .order(ByteOrder.LITTLE_ENDIAN)
                .position(HEADER + a * size)
                .limit(HEADER + (a + 1) * size));
    }

    /** The row of an arrangement of the first side of which something is solved. */
    int[] row(int a) {
        int[] row = new int[rowLength];
        map.duplicate()
                .order(ByteOrder.LITTLE_ENDIAN)
                .position(rowAt[a])
                .asIntBuffer()
                .get(row);
        return row;
    }

    /**
     * Writes a file, whole or not at all.
     *
     * @param file where to
     * @param cubes those of the score
     * @param width lanes of a pair
     * @param solved by the arrangement of the first side, those of the second; null or empty where there is none
     * @param rows values, by the arrangement of the first side
     * @throws IOException if that fails; an older file is as it was
     */
    static void write(Path file, EndingCubes cubes, int width, BitSet[] solved, int[][] rows) throws IOException {
        int arrangements = solved.length;
        ByteBuffer header = header(cubes, arrangements, width);
        CRC32C sum = new CRC32C();
        sum.update(header.duplicate().flip());
        try (PartFile part = PartFile.of(file).discardedAtExit()) {
            FileChannel channel = part.channel().position(HEADER);
            // A row at a time: to touch memory for all of it would take longer than to write it.
            ByteBuffer piece = ByteBuffer.allocateDirect(arrangements * width * Integer.BYTES)
                    .order(ByteOrder.LITTLE_ENDIAN);
            for (BitSet some : solved) {
                piece.put(some == null ? new byte[0] : some.toByteArray());
                while (piece.position() < bits(arrangements)) {
                    piece.put((byte) 0);
                }
                write(piece, sum, channel);
            }
            for (int a = 0; a < arrangements; a++) {
                if (solved[a] != null && !solved[a].isEmpty()) {
                    piece.asIntBuffer().put(rows[a]);
                    write(piece.position(piece.capacity()), sum, channel);
                }
            }
            header.putInt((int) sum.getValue()).putInt(0).flip();
            channel.position(0);
            writeAll(header, channel);
            channel.force(true);
            part.become(file);
        }
    }

    /** Writes what a buffer holds, and clears it. */
    private static void write(ByteBuffer piece, CRC32C sum, FileChannel channel) throws IOException {
        sum.update(piece.flip());
        writeAll(piece.rewind(), channel);
        piece.clear();
    }

    private static void writeAll(ByteBuffer piece, FileChannel channel) throws IOException {
        while (piece.hasRemaining()) {
            channel.write(piece);
        }
    }
}
