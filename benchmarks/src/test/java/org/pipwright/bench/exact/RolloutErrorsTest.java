package org.pipwright.bench.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.cli.Main;
import org.pipwright.engine.rollout.Estimate;

class RolloutErrorsTest {
    /** By hand: off by 1 and by 4 of the errors printed; the third was right to print none, the fourth was not. */
    @Test
    void errorsInUnitsOfPrintedOnes() {
        RolloutErrorsCommand.PrintedErrors errors = new RolloutErrorsCommand.PrintedErrors();
        errors.add(new Estimate(0.6, 0.1), 0.5);
        errors.add(new Estimate(0.1, 0.1), 0.5);
        errors.add(new Estimate(1, 0), 1);
        errors.add(new Estimate(1, 0), 0.9);
        assertEquals(4, errors.count());
        // (1 + 16) / 2; (0.01 + 0.16 + 0.01) / 0.02; one of two beyond 3.
        assertEquals("8.50 | 9.00 | 50.0 % | 4.0 | 1", errors.toString());
    }

    @Test
    void aFewRacesOfARound() {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = {"rollout-errors", "--races", "40", "--games", "36,72", "--checkers", "2", "--threads", "1"};
        assertEquals(0, Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words), err.toString());
        String[] lines = out.toString().split("\n");
        assertEquals(4, lines.length, out.toString());
        assertTrue(lines[2].startsWith("| 36 | ") && lines[3].startsWith("| 72 | "), out.toString());
        assertTrue(lines[2].endsWith(" | 0 |") && lines[3].endsWith(" | 0 |"), "none printed as 0: " + out);
    }
}
