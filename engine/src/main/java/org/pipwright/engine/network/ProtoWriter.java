package org.pipwright.engine.network;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/**
 * Writes the protocol buffer wire format, as much of it as {@link OnnxFile} needs: each field is its number and kind in one
 * varint, then a varint or a length and that many bytes (Protocol Buffers documentation, "Encoding").
 */
final class ProtoWriter {
    private static final int VARINT = 0;
    private static final int BYTES = 2;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    /** A number, at least 0. */
    ProtoWriter number(int field, long value) {
        varint((long) field << 3 | VARINT);
        varint(value);
        return this;
    }

    ProtoWriter bytes(int field, byte[] bytes) {
        varint((long) field << 3 | BYTES);
        varint(bytes.length);
        out.writeBytes(bytes);
        return this;
    }

    ProtoWriter text(int field, String text) {
        return bytes(field, text.getBytes(StandardCharsets.UTF_8));
    }

    ProtoWriter message(int field, ProtoWriter message) {
        return bytes(field, message.toBytes());
    }

    byte[] toBytes() {
        return out.toByteArray();
    }

    /** Seven bits a byte, the lowest first; the top bit says that more follow. */
    private void varint(long value) {
        long rest = value;
        while (rest > 0x7F) {
            out.write((int) (rest & 0x7F | 0x80));
            rest >>>= 7;
        }
        out.write((int) rest);
    }
}
