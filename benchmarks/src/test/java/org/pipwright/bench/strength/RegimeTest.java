package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.position.PositionText;

/** Positions whose kind is plain to see; each from both sides, since a regime does not depend on who is on roll. */
class RegimeTest {
    @ParameterizedTest
    @CsvSource({
        "OPENING, start",
        // Six checkers have moved, then seven.
        "OPENING, 5@6 3@8 1@10 4@13 1@18 1@24 / 1@3 1@4 3@6 2@8 1@11 4@13 1@14 2@24",
        "CONTACT, 5@6 3@8 1@10 4@13 1@18 1@24 / 1@3 1@4 1@5 2@6 2@8 1@11 4@13 1@14 2@24",
        // Four points in a row with something behind them, on the bar too, and with nothing behind them.
        "PRIMING, 2@5 3@6 3@7 3@8 2@13 2@22 / 2@4 4@6 3@8 4@13 2@24",
        "PRIMING, 2@5 3@6 3@7 3@8 2@13 2@22 / 2@4 4@6 3@8 4@13 1@22 1@bar",
        "CONTACT, 4@10 3@11 3@12 3@13 2@22 / 1@2 2@4 5@6 3@8 4@11",
        // Two points held in the other's home and far behind, then not far enough.
        "BACK_GAME, 2@22 2@24 3@13 4@8 4@6 / 3@4 3@5 3@6 3@7 1@8 2@11",
        "CONTACT, 2@22 2@24 2@6 2@5 2@4 2@2 3@1 / 2@8 2@10 3@4 2@5 2@6 2@14 2@16",
        "BEAR_OFF_CONTACT, 3@1 3@2 3@3 2@5 / 2@21 3@6 3@5 4@4 3@3",
        "BEAR_OFF_CONTACT, 1@bar 3@6 3@5 4@4 4@3 / 3@1 3@2 3@3 2@5",
        "RACE, 5@6 5@8 5@10 / 5@6 5@8 5@10",
        "RACE, 3@1 3@2 / 3@6"
    })
    void isWhatAPlayerWouldSay(Regime regime, String text) {
        assertEquals(regime, Regime.of(PositionText.parse(text)));
        assertEquals(regime, Regime.of(PositionText.parse(text).swapped()));
    }
}
