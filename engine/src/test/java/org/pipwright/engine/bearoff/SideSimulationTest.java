package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * Mean rolls of sides beyond the standard table against exact ones, and how far they are said to be off: what the simulation
 * allows for was fitted to other sides.
 */
class SideSimulationTest {
    private final SideSimulation simulation = new SideSimulation(Tables.oneSided(6, 15));

    private SideOutlook outlook(List<String> row) {
        int[] planes = CheckRows.side(row.get(1));
        int checkers = Integer.parseInt(row.get(2));
        for (int n = checkers; n < Position.FULL; n++) {
            Planes.add(planes, 0, Planes.OFF);
        }
        return simulation.outlook(planes, 0);
    }

    @Test
    void meansAreAsExactAsTheySay() throws IOException {
        int known = 0;
        int simulated = 0;
        double squares = 0;
        double excess = 0;
        for (List<String> row : CheckRows.of("onesided-beyond-home.tsv")) {
            SideOutlook outlook = outlook(row);
            double off = outlook.off().mean() - Double.parseDouble(row.get(4));
            if (outlook.basis() == Basis.DISTRIBUTIONS) {
                assertEquals(0, outlook.error());
                assertEquals(0, off, 1e-6, row.get(1));
                known++;
            } else if (Math.abs(off) > 1e-6) {
                assertTrue(
                        outlook.error() < 0.05 && Math.abs(off) < 2 * outlook.error(), row.get(1) + " off by " + off);
                squares += Math.pow(off / outlook.error(), 2);
                excess += off;
                simulated++;
            }
        }
        assertTrue(known > 35 && simulated > 20, known + " known, " + simulated + " simulated");
        double ratio = squares / simulated;
        assertTrue(ratio > 0.3 && ratio < 3, "squares of errors in units of them: " + ratio);
        assertTrue(Math.abs(excess / simulated) < 0.004, "means too large by " + excess / simulated);
    }

    /** Four checkers and fewer are known wherever they stand, those in the opponent's home among them. */
    @Test
    void aFewCheckersAreKnownAnywhere() throws IOException {
        for (List<String> row : CheckRows.of("onesided-beyond-home.tsv")) {
            if (Integer.parseInt(row.get(2)) <= 4) {
                assertEquals(Basis.DISTRIBUTIONS, outlook(row).basis(), row.get(1));
            }
        }
    }
}
