package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

@Tag("fast")
class EfficiencyByRegimeTest {
    @Test
    void aLongerRaceUsesTheCubeBetter() {
        CubeEfficiency last = EfficiencyByRegime.ofRace(1);
        for (int pips = 2; pips <= 200; pips++) {
            CubeEfficiency next = EfficiencyByRegime.ofRace(pips);
            assertTrue(next.behind() >= last.behind() && next.ahead() >= last.ahead(), pips + " pips");
            // No jumps: a pip more changes little.
            assertTrue(next.ahead() - last.ahead() < 0.04, pips + " pips");
            assertTrue(next.ahead() >= next.behind());
            last = next;
        }
        assertEquals(EfficiencyByRegime.ofRace(110), EfficiencyByRegime.ofRace(300));
    }

    @Test
    void contactAndRaceAreToldApart() {
        assertEquals(EfficiencyByRegime.CONTACT, EfficiencyByRegime.of(Position.start()));
        Position race = PositionText.parse("5@6 5@5 5@4 / 5@6 5@5 5@2");
        assertEquals(EfficiencyByRegime.ofRace((75 + 65) / 2.0), EfficiencyByRegime.of(race));
    }

    @Test
    void theEfficiencyRisesWithTheOwnersChance() {
        CubeEfficiency efficiency = new CubeEfficiency(0.3, 0.9);
        assertEquals(0.3, efficiency.owned(0.1), 1e-12);
        assertEquals(0.6, efficiency.owned(0.5), 1e-12);
        assertEquals(0.9, efficiency.owned(0.95), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> new CubeEfficiency(0.3, 1.1));
        assertThrows(IllegalArgumentException.class, () -> new CubeEfficiency(Double.NaN, 1));
    }
}
