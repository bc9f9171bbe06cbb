package org.pipwright.engine.bearoff;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.function.Consumer;
import java.util.zip.CRC32C;
import org.pipwright.engine.files.PartFile;

/**
 * The file form of a table: 64 bytes of header, then the content. All numbers are little-endian.
 *
 * <p>Header: 8 bytes {@code PIPTABLE}; ints: version, kind, points, checkers; a long: bytes of content; two ints: the
 * CRC-32C (RFC 3720) of the content and of the header up to here; zeros.
 */
final class TableFile {
    /** Version of the layout of header and contents. 1: the first. */
    static final int VERSION = 1;

    static final int HEADER = 64;

    private static final long MAGIC = 0x454C424154504950L;
    private static final int CONTENT_SUM_AT = 32;
    private static final int HEADER_SUM_AT = 36;

    private TableFile() {}

    /**
     * Makes a file by computing its content in place: in a mapped temporary file beside it, renamed when whole.
     *
     * @param size bytes of content
     * @param filler computes the content
     * @return the content
     * @throws IOException if the file cannot be made, or there is no room for all of it
     */
    static ByteBuffer create(Path file, TableKind kind, SideIndex index, long size, Consumer<ByteBuffer> filler)
            throws IOException {
        try (PartFile part = PartFile.of(file).discardedAtExit()) {
            reserve(part.channel(), HEADER + size);
            MappedByteBuffer map = part.channel().map(FileChannel.MapMode.READ_WRITE, 0, HEADER + size);
            ByteBuffer content = map.position(HEADER).slice().order(ByteOrder.LITTLE_ENDIAN);
            filler.accept(content);
            map.rewind().put(header(kind, index, content));
            map.force();
            part.become(file);
            return content;
        }
    }

    /** A full disk shows here, as an exception; in the mapped file it would be an error of the virtual machine. */
    private static void reserve(FileChannel channel, long size) throws IOException {
        ByteBuffer zeros = ByteBuffer.allocate(1 << 20);
        for (long left = size; left > 0; ) {
            zeros.clear().limit((int) Math.min(left, zeros.capacity()));
            left -= channel.write(zeros);
        }
    }

    /** The header for a content. */
    static ByteBuffer header(TableKind kind, SideIndex index, ByteBuffer content) {
        ByteBuffer header = ByteBuffer.allocate(HEADER).order(ByteOrder.LITTLE_ENDIAN);
        header.putLong(MAGIC).putInt(VERSION).putInt(kind.code);
        header.putInt(index.points()).putInt(index.checkers()).putLong(content.remaining());
        header.putInt(checksum(content));
        header.putInt(checksum(header.duplicate().flip()));
        return header.rewind();
    }

    private static int checksum(ByteBuffer bytes) {
        CRC32C sum = new CRC32C();
        sum.update(bytes.duplicate());
        return (int) sum.getValue();
    }

    /**
     * Maps a file and checks it.
     *
     * @param whole whether to read the content too and compare it with its checksum
     * @return the content
     * @throws DamagedTableException if this is not a whole table of this kind and size
     * @throws IOException if the file cannot be read
     */
    static ByteBuffer open(Path file, TableKind kind, SideIndex index, boolean whole)
            throws IOException, DamagedTableException {
        MappedByteBuffer map;
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            if (channel.size() < HEADER || channel.size() > Integer.MAX_VALUE) {
                throw new DamagedTableException("its size is " + channel.size() + " bytes");
            }
            map = channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size());
        }
        map.order(ByteOrder.LITTLE_ENDIAN);
        checkHeader(map, kind, index);
        ByteBuffer content = map.position(HEADER).slice().order(ByteOrder.LITTLE_ENDIAN);
        if (whole && checksum(content) != map.getInt(CONTENT_SUM_AT)) {
            throw new DamagedTableException("its content does not match its checksum");
        }
        return content;
    }

    private static void checkHeader(ByteBuffer map, TableKind kind, SideIndex index) throws DamagedTableException {
        if (map.getLong(0) != MAGIC) {
            throw new DamagedTableException("it does not begin like a table");
        }
        if (checksum(map.duplicate().limit(HEADER_SUM_AT)) != map.getInt(HEADER_SUM_AT)) {
            throw new DamagedTableException("its header does not match its checksum");
        }
        if (map.getInt(8) != VERSION
                || map.getInt(12) != kind.code
                || map.getInt(16) != index.points()
                || map.getInt(20) != index.checkers()) {
            throw new DamagedTableException("it holds another table than its name says");
        }
        if (map.getLong(24) != map.capacity() - HEADER) {
            throw new DamagedTableException("it is cut short or has bytes too many");
        }
    }
}
