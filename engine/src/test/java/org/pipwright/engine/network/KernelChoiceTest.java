package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** What the property that names the kernel chooses. */
class KernelChoiceTest {
    @Test
    void plainIsPlain() {
        assertSame(Kernel.plain(), Kernel.choose("Plain"));
    }

    @Test
    void autoTakesVectorWhereThereIsOne() {
        Class<?> vector = VectorForTests.kernel().getClass();
        assertEquals(vector, Kernel.choose("auto").getClass());
        assertEquals(vector, Kernel.choose("vector").getClass());
    }

    @Test
    void anythingElseIsRefused() {
        Exception e = assertThrows(IllegalStateException.class, () -> Kernel.choose("fast"));
        assertEquals("pipwright.kernel is 'fast': use auto, plain or vector", e.getMessage());
    }
}
