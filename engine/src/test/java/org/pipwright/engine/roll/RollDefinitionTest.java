package org.pipwright.engine.roll;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("fast")
class RollDefinitionTest {
    @Test
    void thirtySixThrowsMakeTwentyOneRolls() {
        int[] ways = new int[Roll.COUNT];
        for (int die = 1; die <= 6; die++) {
            for (int other = 1; other <= 6; other++) {
                Roll roll = Roll.of(die, other);
                ways[roll.index()]++;
                assertEquals(Math.max(die, other), roll.high());
                assertEquals(Math.min(die, other), roll.low());
                assertEquals(die == other, roll.isDouble());
                assertSame(roll, Roll.of(other, die));
                assertSame(roll, Roll.parse(die + "-" + other));
                assertSame(roll, Roll.parse(" " + die + other + " "));
                assertEquals(roll.high() + "-" + roll.low(), roll.toString());
            }
        }
        Set<Roll> distinct = new HashSet<>(Roll.all());
        assertEquals(Roll.COUNT, distinct.size());
        double sum = 0;
        for (int i = 0; i < Roll.COUNT; i++) {
            Roll roll = Roll.all().get(i);
            assertEquals(i, roll.index());
            assertEquals(ways[i], roll.ways());
            assertEquals(ways[i] / 36.0, roll.probability());
            sum += roll.probability();
        }
        assertEquals(1, sum, 1e-15);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "3", "7-1", "0-1", "3-1-1", "3/1", "three one", "31x"})
    void refusesWhatIsNoRoll(String text) {
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, () -> Roll.parse(text));
        assertTrue(refusal.getMessage().contains("'" + text + "' is not a roll"), refusal.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 0", "7, 1", "1, 7", "-3, 3"})
    void refusesDiceThatDoNotExist(int die, int other) {
        assertThrows(IllegalArgumentException.class, () -> Roll.of(die, other));
    }
}
