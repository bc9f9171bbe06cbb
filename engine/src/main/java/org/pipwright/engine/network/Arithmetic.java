package org.pipwright.engine.network;

/** How this process computes what nets say. */
public final class Arithmetic {
    private Arithmetic() {}

    /**
     * What decides the last bits: two processes that say the same get the same bits from the same net.
     *
     * @return for instance {@code vectors of 8 floats} or {@code plain}
     */
    public static String name() {
        return Kernel.chosen().name();
    }
}
