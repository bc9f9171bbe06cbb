package org.pipwright.engine.network;

/**
 * A product and a sum, rounded once where the processor does both in one instruction, as vectors do it, and twice where it
 * does not: there {@link Math#fma} computes with big numbers, a thousand times as long.
 */
final class MultiplyAdd {
    private static final int TRIALS = 5;

    private static final int CALLS = 100;

    /** Nanoseconds for so many calls: an instruction takes a twentieth of it, interpreted too, big numbers ten times that. */
    private static final long LONGEST = 100_000;

    private static final boolean FUSED = isInstruction();

    private MultiplyAdd() {}

    /** {@code a * b + c}. */
    static float of(float a, float b, float c) {
        return FUSED ? Math.fma(a, b, c) : a * b + c;
    }

    /** Nothing but the time tells. The quickest of several trials counts, so that a pause in one of them does not matter. */
    private static boolean isInstruction() {
        float sum = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            long begin = System.nanoTime();
            for (int call = 1; call <= CALLS; call++) {
                sum = Math.fma(call, 1.1f, sum);
            }
            if (System.nanoTime() - begin < LONGEST) {
                return sum > 0;
            }
        }
        return false;
    }
}
