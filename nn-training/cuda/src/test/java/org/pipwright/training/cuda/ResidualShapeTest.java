package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ResidualShapeTest {
    /** Every tensor has its place, aligned, and no two share one. */
    @ParameterizedTest
    @CsvSource({"128,1", "384,3", "1024,6"})
    void tensorsLieBesideEachOther(int width, int blocks) {
        ResidualShape shape = new ResidualShape(width, blocks);
        int[] owner = new int[shape.size()];
        take(owner, 0, ResidualShape.INPUTS * width);
        take(owner, shape.inputBias(), width);
        for (int k = 0; k < blocks; k++) {
            take(owner, shape.a(k), width * width);
            take(owner, shape.aBias(k), width);
            take(owner, shape.b(k), width * width);
            take(owner, shape.bBias(k), width);
        }
        take(owner, shape.output(), width * ResidualShape.OUTPUTS);
        take(owner, shape.outputBias(), ResidualShape.OUTPUTS);
        int used = java.util.Arrays.stream(owner).sum();
        int tensors = 4 + 4 * blocks;
        assertTrue(shape.size() - used < 64 * tensors, "gaps only where alignment needs them");
    }

    private static void take(int[] owner, int at, int length) {
        assertEquals(0, at % 64);
        for (int i = at; i < at + length; i++) {
            assertEquals(0, owner[i]++, "taken twice");
        }
    }

    @Test
    void firstWeightsLeaveUnusedColumnsAndBiasesAtZero() {
        ResidualShape shape = new ResidualShape(128, 2);
        float[] weights = shape.initial(new SplittableRandom(1));
        double squares = 0;
        for (int i = 0; i < 128 * 128; i++) {
            squares += weights[shape.a(1) + i] * weights[shape.a(1) + i];
        }
        assertEquals(2.0 / 128, squares / (128 * 128), 0.001);
        for (int i = 0; i < 128; i++) {
            assertEquals(0, weights[shape.output() + 8 * i + 6]);
            assertEquals(0, weights[shape.bBias(1) + i]);
        }
    }

    @Test
    void shapesAreRead() {
        assertEquals(new ResidualShape(768, 4), ResidualShape.parse("768x4"));
        assertEquals("768x4", new ResidualShape(768, 4).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "1024", "100x2", "1152x2", "128x0", "128x65", "128x-1", "0128x1x", "x"})
    void othersAreNot(String text) {
        assertFalse(ResidualShape.isOne(text));
        assertThrows(IllegalArgumentException.class, () -> ResidualShape.parse(text));
    }
}
