package org.pipwright.cli.console;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ScreenTest {
    @Test
    void aFileHasNoColoursAndNoWidth() {
        assertEquals(Screen.NONE, Screen.of(Map.of("TERM", "xterm"), false, 80));
    }

    @Test
    void aTerminalHasBothUnlessTheUserAsksForNoColour() {
        assertEquals(new Screen(80, true), Screen.of(Map.of("TERM", "xterm"), true, 80));
        assertEquals(new Screen(80, true), Screen.of(Map.of("TERM", "xterm", "NO_COLOR", ""), true, 80));
        assertEquals(new Screen(80, false), Screen.of(Map.of("TERM", "xterm", "NO_COLOR", "1"), true, 80));
        assertEquals(new Screen(80, false), Screen.of(Map.of("TERM", "dumb"), true, 80));
        assertEquals(new Screen(0, false), Screen.of(Map.of(), true, -1));
    }
}
