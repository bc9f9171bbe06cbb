package org.pipwright.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

class PositionArgumentTest {
    private static Position read(String line) {
        return PositionArgument.read(List.of(line.split(" ")), InputStream.nullInputStream());
    }

    /** Words as a shell gives them, without quotes. */
    @ParameterizedTest
    @ValueSource(
            strings = {"start", "2@6 1@bar / 3@4 2@20 of 5", "10@6 2@8 / 12@5 of 12", "5@6,3@8,5@13,2@24 / 15@6 of 15"})
    void quotesAreNotNeeded(String text) {
        assertEquals(PositionText.parse(text), read(text));
    }

    /** Some of these numbers look like rolls. */
    @Test
    void theStartOfEachGame() {
        for (int checkers = 1; checkers <= 12; checkers++) {
            assertEquals(Position.start(checkers), read("start of " + checkers));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"start 31", "start 3-1", "start of 3 31", "start of 12 12", "12 of 12"})
    void aRollIsToldFromAPosition(String line) {
        String message = assertThrows(UserError.class, () -> read(line)).getMessage();
        assertTrue(message.contains("' is a roll, not part of a position"), message);
    }
}
