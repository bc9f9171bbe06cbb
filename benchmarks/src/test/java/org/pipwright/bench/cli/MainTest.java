package org.pipwright.bench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Command lines of the benchmarks. */
class MainTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String line) {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), line.split(" "));
    }

    @Test
    void theHelpNamesEveryMeasurement() {
        assertEquals(0, run("--help"));
        for (String name : new String[] {"speed", "signature", "score", "match-table", "races"}) {
            assertTrue(out.toString().contains("\n  " + name + " "), out.toString());
        }
        assertEquals(0, run("score --help"));
        assertTrue(out.toString().contains("--truncation=N"), out.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "scores | Unmatched argument",
                "duels --nets a | Unknown option",
                "duels --games | Missing required parameter",
                "duels --games x | is not an int",
                "duels --games 1 | --games takes a whole number from 2 to 100000000, not '1'",
                "duels --threads 1025 | --threads takes a whole number from 1 to 1024, not '1025'",
                "solve --checkers 4 | --checkers takes a whole number from 1 to 3, not '4'",
                "score --net pips | Missing required option: '--reference=FILE'",
                "duels --net nowhere | nowhere"
            })
    void whatCannotBeIsOneLineAndExitCodeTwo(String line, String said) {
        assertEquals(2, run(line));
        assertTrue(err.toString().contains(said), err.toString());
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertEquals("", out.toString());
    }

    @Test
    void withoutAMeasurementItSaysWhichThereAre() {
        assertEquals(2, run(""));
        assertTrue(err.toString().contains("--help"), err.toString());
    }
}
