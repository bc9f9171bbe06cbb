package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.bench.cli.Main;

/** Two references beside each other. */
class DifferencesTest {
    private static Reference reference(int id, Reference.Rolled... plays) {
        return new Reference(id, Regime.RACE, "position", "3-1", "a v b", 72, List.of(plays), Map.of());
    }

    private static Reference.Rolled rolled(String play, double behind, double error) {
        return new Reference.Rolled(play, 0.1 + behind, behind, error);
    }

    @Test
    void differencesAreFromTheFirstOnesBest() {
        List<Reference> one = List.of(
                reference(1, rolled("a", 0, 0), rolled("b", -0.01, 0.003), rolled("c", -0.1, 0.004)),
                reference(2, rolled("a", 0, 0)),
                reference(3, rolled("x", 0, 0), rolled("y", -0.02, 0.001)));
        List<Reference> other = List.of(
                reference(3, rolled("x", 0, 0), rolled("y", -0.05, 0.002)),
                reference(1, rolled("b", 0, 0), rolled("a", -0.005, 0.004), rolled("d", -0.1, 0.001)));
        Differences differences = Differences.of(one, other);
        assertEquals(2, differences.decisions());
        assertEquals(1, differences.sameBest());
        assertEquals(0.0025, differences.loss(), 1e-9);
        // b: +0.005 instead of -0.01; y: -0.05 instead of -0.02; c is in one file only.
        assertEquals(2, differences.all().plays());
        assertEquals((0.015 - 0.03) / 2, differences.all().mean(), 1e-9);
        assertEquals(
                0.003 * 0.003 + 0.004 * 0.004 + 0.001 * 0.001 + 0.002 * 0.002,
                differences.all().errors(),
                1e-12);
        assertEquals(differences.all(), differences.close());
    }

    /** Errors alone leave nothing; a bias of 0.003 is found below errors of 0.004. */
    @Test
    void whatErrorsMakeIsTakenAway() {
        Random random = new Random(3);
        for (double bias : new double[] {0, 0.003}) {
            List<Reference> one = new ArrayList<>();
            List<Reference> other = new ArrayList<>();
            for (int id = 1; id <= 4000; id++) {
                double more = random.nextBoolean() ? bias : -bias;
                one.add(reference(id, rolled("a", 0, 0), rolled("b", -0.5 + 0.004 * random.nextGaussian(), 0.004)));
                other.add(reference(
                        id, rolled("a", 0, 0), rolled("b", -0.5 + more + 0.004 * random.nextGaussian(), 0.004)));
            }
            Differences.Sums sums = Differences.of(one, other).all();
            assertEquals(0.004 * Math.sqrt(2), sums.expected(), 1e-9);
            assertEquals(bias, sums.beyondErrors(), bias == 0 ? 0.0012 : 0.0005);
            assertEquals(0, Differences.of(one, other).close().plays());
        }
    }

    @Test
    void theCommandSaysIt(@TempDir Path folder) throws IOException {
        ReferenceHeader header = new ReferenceHeader(ReferenceHeader.KIND, "0", "net", "0", 1, 0, 2, 72, 0.004, 0.12);
        Path one = folder.resolve("one");
        Path other = folder.resolve("other");
        JsonLines.write(one, header, List.of(reference(1, rolled("a", 0, 0), rolled("b", -0.01, 0.003))));
        JsonLines.write(other, header, List.of(reference(1, rolled("a", 0, 0), rolled("b", -0.02, 0.004))));
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] line = {"differences", "--one", one.toString(), "--other", other.toString()};
        assertEquals(0, Main.run(new PrintWriter(out), new PrintWriter(err), line), err::toString);
        assertTrue(out.toString().startsWith("1 decisions in both, 1 with the same best play"), out.toString());
        assertTrue(
                out.toString()
                        .contains("1 plays: what they are behind differs by -0.01000 on average, root mean square"
                                + " 0.01000, of which errors make 0.00500 and leave 0.00866"),
                out.toString());
        JsonLines.write(other, header, List.of());
        assertEquals(2, Main.run(new PrintWriter(out), new PrintWriter(err, true), line));
        assertTrue(err.toString().contains("no decision in common"), err.toString());
    }
}
