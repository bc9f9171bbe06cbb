package org.pipwright.engine.features;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The code of a place, written out. */
@Tag("fast")
class PlaceCodeTest {
    private static float[] code(int place, int count) {
        float[] code = new float[PlaceCode.LENGTH];
        for (int k = 0; k < code.length; k++) {
            code[k] = PlaceCode.value(place, count, k);
        }
        return code;
    }

    private static float[] numbers(String text) {
        float[] numbers = new float[PlaceCode.LENGTH];
        String[] words = text.split(" ");
        for (int k = 0; k < numbers.length; k++) {
            String[] parts = words[k].split("/");
            numbers[k] = Float.parseFloat(parts[0]) / (parts.length > 1 ? Float.parseFloat(parts[1]) : 1);
        }
        return numbers;
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0 0 0 0 0",
        "1, 1 0 0 0 0",
        "2, 0 1 0 0 0",
        "3, 0 1 1 0 0",
        "4, 0 1 1 1 0",
        "5, 0 1 1 1 1/3",
        "6, 0 1 1 1 2/3",
        "7, 0 1 1 1 1",
        "15, 0 1 1 1 11/3"
    })
    void pointsAndBar(int count, String expected) {
        for (int place = 1; place <= 25; place++) {
            assertArrayEquals(numbers(expected), code(place, count), 1e-6f);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0 0 0 0 0",
        "1, 1 1/3 1/5 0 0",
        "2, 1 2/3 2/5 0 0",
        "3, 1 1 3/5 0 0",
        "4, 1 1 4/5 0 0",
        "5, 1 1 1 0 0",
        "6, 1 1 1 1/5 0",
        "10, 1 1 1 1 0",
        "11, 1 1 1 1 1/5",
        "15, 1 1 1 1 1"
    })
    void off(int count, String expected) {
        assertArrayEquals(numbers(expected), code(0, count), 1e-6f);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 25})
    void everyCountHasACodeOfItsOwn(int place) {
        for (int a = 0; a <= 15; a++) {
            for (int b = 0; b < a; b++) {
                assertNotEquals(Arrays.toString(code(place, a)), Arrays.toString(code(place, b)));
            }
        }
    }

    @Test
    void tablesHoldTheSame() {
        for (int place = 0; place <= 25; place++) {
            for (int count = 0; count <= 15; count++) {
                assertArrayEquals(code(place, count), PlaceCode.values(place, count));
            }
        }
    }

    @Test
    void lengthIsThatOfTheTables() {
        assertEquals(5, PlaceCode.LENGTH);
    }
}
