package org.pipwright.bench.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.cli.Main;

/** The match model held against exact races at one score. */
class MatchCubeCommandTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... words) {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    /** Mean cost of a doubling decision by kind of position. */
    private double[] costs(String model) {
        return Pattern.compile("    " + model + " .* lost a doubling decision ([0-9.]+)")
                .matcher(out.toString().split("all scores together")[1])
                .results()
                .map(MatchResult::group)
                .mapToDouble(line -> Double.parseDouble(line.replaceAll(".* ", "")))
                .toArray();
    }

    @Test
    void theShippedModelLosesLessThanTheWalkAlone() {
        assertEquals(0, run("match-cube", "--scores", "5,4", "--net", "fifth", "--threads", "1"), err.toString());
        double[] shipped = costs("shipped");
        double[] walk = costs("the walk alone");
        assertEquals(8, shipped.length, out.toString());
        for (int i = 0; i < 4; i++) {
            assertTrue(shipped[i] < 0.5 * walk[i], out.toString());
        }
    }

    @Test
    void aScoreIsTwoNumbers() {
        assertEquals(2, run("match-cube", "--scores", "5"));
        assertEquals(
                "'5' is not a score: write the points to go of both sides, as in 3,5",
                err.toString().strip());
    }
}
