package org.pipwright.engine.bearoff;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.zip.CRC32C;
import org.pipwright.engine.fuzz.ScratchFile;
import org.pipwright.engine.fuzz.Target;

/** Files of tables, with the checksums of header and content put right. */
final class TableTarget implements Target {
    private static final SideIndex INDEX = new SideIndex(2, 2);

    private final ScratchFile file = new ScratchFile();

    @Override
    public List<byte[]> seeds() {
        ByteBuffer content = ByteBuffer.allocate(24).order(ByteOrder.LITTLE_ENDIAN);
        content.putInt(4, 7);
        ByteBuffer all = ByteBuffer.allocate(TableFile.HEADER + content.capacity());
        all.put(TableFile.header(TableKind.ONE_SIDED, INDEX, content)).put(TableFile.HEADER, content.array());
        return List.of(all.array());
    }

    @Override
    public boolean read(byte[] data) throws IOException {
        return taken(data) | taken(sealed(data));
    }

    private boolean taken(byte[] data) throws IOException {
        ByteBuffer content;
        try {
            content = TableFile.open(file.with(data), TableKind.ONE_SIDED, INDEX, true);
        } catch (DamagedTableException e) {
            return false;
        }
        if (content.remaining() != data.length - TableFile.HEADER) {
            throw new IllegalStateException("a content of " + content.remaining() + " bytes");
        }
        return true;
    }

    private static byte[] sealed(byte[] data) {
        if (data.length < TableFile.HEADER) {
            return data;
        }
        ByteBuffer sealed = ByteBuffer.wrap(data.clone()).order(ByteOrder.LITTLE_ENDIAN);
        sealed.putInt(32, sum(data, TableFile.HEADER, data.length));
        sealed.putInt(36, sum(sealed.array(), 0, 36));
        return sealed.array();
    }

    private static int sum(byte[] data, int from, int to) {
        CRC32C sum = new CRC32C();
        sum.update(data, from, to - from);
        return (int) sum.getValue();
    }
}
