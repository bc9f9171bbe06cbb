package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Half precision against its definition (IEEE 754-2008, binary16), over all of its 65,536 patterns. */
class HalfFloatsTest {
    private static double naive(int half) {
        int exponent = half >> 10 & 31;
        int fraction = half & 1023;
        double size = exponent == 0 ? fraction * Math.pow(2, -24) : (1024 + fraction) * Math.pow(2, exponent - 25);
        size = exponent < 31 ? size : fraction == 0 ? Double.POSITIVE_INFINITY : Double.NaN;
        return (half & 0x8000) == 0 ? size : -size;
    }

    @Test
    void everyPattern() {
        ByteBuffer all = ByteBuffer.allocate(3 + (1 << 17)).order(ByteOrder.LITTLE_ENDIAN);
        for (int half = 0; half < 1 << 16; half++) {
            all.putShort(3 + 2 * half, (short) half);
        }
        float[] numbers = HalfFloats.toFloats(all.array(), 3, 1 << 16);
        for (int half = 0; half < 1 << 16; half++) {
            assertEquals((float) naive(half), numbers[half], Integer.toHexString(half));
            float number = HalfFloats.toFloat((short) half);
            assertEquals((float) naive(half), number, Integer.toHexString(half));
            if (Float.isFinite(number)) {
                assertEquals((short) half, HalfFloats.ofFloat(number), Integer.toHexString(half));
            }
        }
    }

    /** Between two neighbours: to the nearer one, from the middle to the even one. */
    @Test
    void roundsToTheNearest() {
        for (int half = 0; half < 0x7BFF; half++) {
            float low = (float) naive(half);
            float high = (float) naive(half + 1);
            float middle = (low + high) / 2;
            int even = half + (half & 1);
            for (int sign : new int[] {1, -1}) {
                int bit = sign < 0 ? 0x8000 : 0;
                assertEquals((short) (half | bit), HalfFloats.ofFloat(sign * Math.nextDown(middle)));
                assertEquals((short) (even | bit), HalfFloats.ofFloat(sign * middle));
                assertEquals((short) (half + 1 | bit), HalfFloats.ofFloat(sign * Math.nextUp(middle)));
            }
        }
        assertEquals(0x7BFF, HalfFloats.ofFloat(Math.nextDown(65520f)));
        assertEquals(0x7C00, HalfFloats.ofFloat(65520f));
        assertEquals((short) 0xFC00, HalfFloats.ofFloat(-Float.MAX_VALUE));
    }

    @Test
    void layersAreRoundedNumberByNumber() {
        Layer layer = RandomNetworks.layer(new SplittableRandom(3), 7, 5);
        Layer rounded = HalfFloats.rounded(layer);
        assertFalse(HalfFloats.hold(layer));
        assertTrue(HalfFloats.hold(rounded));
        assertArrayEquals(layer.weights(), rounded.weights(), 0x1p-12f);
        assertArrayEquals(rounded.weights(), HalfFloats.rounded(rounded).weights());
        Layer large = new Layer(1, 1, new float[] {65520f}, new float[] {0});
        String message = assertThrows(InvalidModelException.class, () -> HalfFloats.rounded(large))
                .getMessage();
        assertEquals("a weight is 65520.0, too large for half precision", message);
    }
}
