package org.pipwright.bench.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.cli.Main;

/** Efficiencies in contact by the game with two checkers a side and a few games of a net. */
class ContactFitCommandTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    /** The mean cost of doubling decisions in the line of a model, in the solved game. */
    private double cost(String model) {
        Matcher line = Pattern.compile("\\n  " + model + "  n +39638 .*doubling decisions ([0-9.]+), of takes")
                .matcher(out.toString());
        assertTrue(line.find(), out.toString());
        return Double.parseDouble(line.group(1));
    }

    @Test
    void whatShipsLosesATenthOfOneEfficiencyForAll() {
        String[] words = {"contact-fit", "--net", "fifth", "--each", "2", "--threads", "2", "--seed", "3"};
        assertEquals(0, Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words), err.toString());
        assertTrue(cost("shipped") < 0.1 * cost("one for all"), out.toString());
        assertTrue(cost("shipped") < 0.1 * cost("a dead cube"), out.toString());
        assertTrue(cost("fitted") < 0.002, out.toString());
        assertEquals(
                6,
                Pattern.compile("games, .* pips")
                        .matcher(out.toString())
                        .results()
                        .count());
    }
}
