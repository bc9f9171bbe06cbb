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
        assertEquals(EfficiencyByRegime.ofContact(167, 15), EfficiencyByRegime.of(Position.start()));
        Position contact = PositionText.parse("1@6 2@22 / 2@6 3@5 2@1");
        assertEquals(EfficiencyByRegime.ofContact((50 + 29) / 2.0, (3 + 7) / 2.0), EfficiencyByRegime.of(contact));
        Position race = PositionText.parse("5@6 5@5 5@4 / 5@6 5@5 5@2");
        assertEquals(EfficiencyByRegime.ofRace((75 + 65) / 2.0), EfficiencyByRegime.of(race));
    }

    /** Numbers of few checkers up to three, of many from nine on, and on straight lines between. */
    @Test
    void contactGoesByPipsAndCheckers() {
        double[] behind = {0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7};
        double[] ahead = {0.8, 0.8, 0.8, 0.8, 1, 1, 1, 1};
        ContactEfficiency efficiency = new ContactEfficiency(behind, ahead);
        assertEquals(new CubeEfficiency(0.1, 0.8), efficiency.at(30, 2));
        assertEquals(0.25, efficiency.at(47.5, 3).behind(), 1e-12);
        assertEquals(new CubeEfficiency(0.7, 1), efficiency.at(400, 15));
        assertEquals(0.55, efficiency.at(100, 9).behind(), 1e-12);
        assertEquals((0.3 + 0.55) / 2, efficiency.at(100, 6).behind(), 1e-12);
        assertEquals(0.9, efficiency.at(100, 6).ahead(), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> new ContactEfficiency(new double[7], ahead));
    }

    /** Leads near the end of a game with contact are gone or won in a roll. */
    @Test
    void leadersUseTheCubeWorseNearTheEnd() {
        for (int checkers = 1; checkers <= 15; checkers++) {
            double last = EfficiencyByRegime.ofContact(10, checkers).ahead();
            for (int pips = 15; pips <= 200; pips += 5) {
                double next = EfficiencyByRegime.ofContact(pips, checkers).ahead();
                assertTrue(next >= last && next - last < 0.2, pips + " pips, " + checkers + " checkers");
                last = next;
            }
        }
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
