package org.pipwright.engine.network;

/** Half precision, the binary16 of IEEE 754-2008: one bit of sign, five of exponent, ten of fraction. */
final class HalfFloats {
    /** Lifts a half's exponent, moved to where a float's is, to what it means: 127 - 15 powers of two. */
    private static final float LIFT = 0x1p112f;

    private static final int INFINITE = 0x7C00;

    /** From here on a number rounds to infinity. */
    private static final float TOO_LARGE = 65520f;

    private static final float MIN_NORMAL = 0x1p-14f;

    private HalfFloats() {}

    /** The number that a half stands for; not finite if it stands for infinity or no number. */
    static float toFloat(short half) {
        int bits = half & 0x7FFF;
        float size = bits < INFINITE
                ? Float.intBitsToFloat(bits << 13) * LIFT
                : bits == INFINITE ? Float.POSITIVE_INFINITY : Float.NaN;
        return half < 0 ? -size : size;
    }

    /** What every half stands for: a number read from a table costs a third of one worked out, before C2 has come. */
    private static final class Table {
        static final float[] NUMBERS = new float[1 << 16];

        static {
            for (int half = 0; half < NUMBERS.length / 2; half++) {
                float size = toFloat((short) half);
                NUMBERS[half] = size;
                NUMBERS[half | NUMBERS.length / 2] = -size;
            }
        }
    }

    /** The numbers that little-endian halves stand for. */
    static float[] toFloats(byte[] halves, int from, int count) {
        float[] table = Table.NUMBERS;
        float[] numbers = new float[count];
        for (int i = 0, at = from; i < count; i++, at += 2) {
            numbers[i] = table[halves[at] & 0xFF | (halves[at + 1] & 0xFF) << 8];
        }
        return numbers;
    }

    /** The half nearest to a finite number, the even one of two; infinity for numbers of 65,520 and more. */
    static short ofFloat(float number) {
        float size = Math.abs(number);
        int sign = Float.floatToRawIntBits(number) >>> 16 & 0x8000;
        if (size >= TOO_LARGE) {
            return (short) (sign | INFINITE);
        }
        if (size < MIN_NORMAL) {
            return (short) (sign | (int) Math.rint(size * 0x1p24));
        }
        int bits = Float.floatToRawIntBits(size) - (112 << 23);
        return (short) (sign | bits + 0xFFF + (bits >>> 13 & 1) >>> 13);
    }

    /** Whether a half holds each number of a layer exactly. */
    static boolean hold(Layer layer) {
        return hold(layer.weights()) && hold(layer.biases());
    }

    private static boolean hold(float[] numbers) {
        for (float number : numbers) {
            if (toFloat(ofFloat(number)) != number) {
                return false;
            }
        }
        return true;
    }

    /** The layer with each number rounded to a half. */
    static Layer rounded(Layer layer) {
        return new Layer(layer.inputs(), layer.outputs(), rounded(layer.weights()), rounded(layer.biases()));
    }

    private static float[] rounded(float[] numbers) {
        float[] rounded = new float[numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            if (Math.abs(numbers[i]) >= TOO_LARGE) {
                throw new InvalidModelException("a weight is " + numbers[i] + ", too large for half precision");
            }
            rounded[i] = toFloat(ofFloat(numbers[i]));
        }
        return rounded;
    }
}
