package org.pipwright.bench.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.cli.Main;

/** The cube model in the game of one checker a side, whose 601 positions are solved in no time. */
class ReducedCubeCommandTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    /** The mean cost of doubling decisions in the line of a model, of the first kind of positions. */
    private double cost(String model) {
        Matcher line = Pattern.compile("\\n  " + model + ".* n +(\\d+) .*doubling decisions ([0-9.]+), of takes")
                .matcher(out.toString());
        assertTrue(line.find(), out.toString());
        assertTrue(Integer.parseInt(line.group(1)) > 50, line.group());
        return Double.parseDouble(line.group(2));
    }

    @Test
    void anEfficiencyFittedThereLosesLess() {
        String[] words = {"reduced-cube", "--checkers", "1", "--threads", "1"};
        assertEquals(0, Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words), err.toString());
        assertTrue(out.toString().startsWith("1 against 1, contact"), out.toString());
        assertTrue(cost("fitted") < 0.002, out.toString());
        assertTrue(cost("fitted") < cost("a dead cube") && cost("fitted") < cost("shipped"), out.toString());
    }
}
