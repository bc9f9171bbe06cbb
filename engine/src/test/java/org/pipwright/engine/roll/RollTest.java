package org.pipwright.engine.roll;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("fast")
class RollTest {
    @Test
    void the21RollsAreThe36Throws() {
        assertEquals(Roll.COUNT, Roll.all().size());
        assertEquals(36, Roll.all().stream().mapToInt(Roll::ways).sum());
        assertEquals(1, Roll.all().stream().mapToDouble(Roll::probability).sum(), 1e-15);
        for (int i = 0; i < Roll.COUNT; i++) {
            assertEquals(i, Roll.all().get(i).index());
        }
    }

    @Test
    void the15OpeningRollsAreThoseThatAreNoDouble() {
        List<String> opening = Roll.opening().stream().map(Roll::toString).collect(Collectors.toList());
        assertEquals(
                List.of(
                        "2-1", "3-1", "3-2", "4-1", "4-2", "4-3", "5-1", "5-2", "5-3", "5-4", "6-1", "6-2", "6-3",
                        "6-4", "6-5"),
                opening);
    }

    @Test
    void openingDiceGiveEveryOpeningRollAndNoOther() {
        Dice dice = Dice.ofGame(46, 0);
        TreeSet<Integer> seen = new TreeSet<>();
        for (int i = 0; i < 2000; i++) {
            seen.add(dice.opening().index());
        }
        assertEquals(Roll.opening().stream().map(Roll::index).collect(Collectors.toCollection(TreeSet::new)), seen);
    }

    @Test
    void eitherOrderWithOrWithoutDashIsRead() {
        for (Roll roll : Roll.all()) {
            assertSame(roll, Roll.parse(roll.toString()));
            assertSame(roll, Roll.parse(" " + roll.low() + roll.high() + " "));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "3", "3-", "3-7", "0-1", "3--1", "311", "3,1", "three one", "-31", "٣١", "3-1\n3-1"})
    void aFaultIsNamedInOneLine(String text) {
        IllegalArgumentException fault = assertThrows(IllegalArgumentException.class, () -> Roll.parse(text));
        assertTrue(
                fault.getMessage().endsWith("is not a roll: write two dice from 1 to 6, as in 3-1 or 31")
                        && !fault.getMessage().contains("\n"),
                fault.getMessage());
    }

    @Test
    void aHugeTextIsQuotedShortly() {
        String huge = "31".repeat(1_000_000);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Roll.parse(huge))
                        .getMessage()
                        .length()
                < 150);
    }
}
