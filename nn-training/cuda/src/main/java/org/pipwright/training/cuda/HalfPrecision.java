package org.pipwright.training.cuda;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Numbers of two bytes as IEEE 754 has them (binary16), as model files hold them. */
final class HalfPrecision {
    private HalfPrecision() {}

    /** Little-endian numbers of two bytes, rounded to the nearest. */
    static byte[] bytes(float[] values) {
        ByteBuffer bytes = ByteBuffer.allocate(2 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (float value : values) {
            bytes.putShort(of(value));
        }
        return bytes.array();
    }

    /** One number, ties to even; too large a one becomes infinite. */
    static short of(float value) {
        int bits = Float.floatToRawIntBits(value);
        int sign = bits >>> 16 & 0x8000;
        int magnitude = bits & 0x7fffffff;
        if (magnitude >= 0x47800000) {
            return (short) (sign | (magnitude > 0x7f800000 ? 0x7e00 : 0x7c00));
        }
        if (magnitude >= 0x38800000) {
            int rounded = magnitude + 0xfff + (magnitude >>> 13 & 1);
            return (short) (sign | (rounded - 0x38000000 >>> 13));
        }
        // Below the least normal number: steps of 2 to the -24.
        return (short) (sign | (int) Math.rint(Math.scalb(Math.abs((double) value), 24)));
    }
}
