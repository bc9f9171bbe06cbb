package org.pipwright.engine.network;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** Model files, as they come and with the checksum put right, since no fuzzer finds one. */
final class ModelTarget implements Target {
    private static final String KEY = "\"sha256\":\"";

    @Override
    public List<byte[]> seeds() {
        return List.of(ModelFile.toBytes(RandomModel.of(1)));
    }

    @Override
    public boolean read(byte[] data) {
        return taken(data) | taken(sealed(data));
    }

    private static boolean taken(byte[] data) {
        Model model;
        try {
            model = ModelReader.read(data);
        } catch (InvalidModelException e) {
            return false;
        }
        byte[] bytes = ModelFile.toBytes(model);
        Seeds.requireSame(ByteBuffer.wrap(bytes), ByteBuffer.wrap(ModelFile.toBytes(ModelReader.read(bytes))));
        return true;
    }

    private static byte[] sealed(byte[] data) {
        if (data.length < Long.BYTES) {
            return data;
        }
        long length = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).getLong();
        int at = new String(data, StandardCharsets.ISO_8859_1).indexOf(KEY);
        if (length < 0 || length > data.length - Long.BYTES || at < 0 || at + KEY.length() + 64 > data.length) {
            return data;
        }
        int from = Long.BYTES + (int) length;
        ByteBuffer weights = ByteBuffer.wrap(data, from, data.length - from).slice();
        byte[] sum = ModelFile.sha256(weights).getBytes(StandardCharsets.US_ASCII);
        byte[] sealed = data.clone();
        System.arraycopy(sum, 0, sealed, at + KEY.length(), sum.length);
        return sealed;
    }
}
