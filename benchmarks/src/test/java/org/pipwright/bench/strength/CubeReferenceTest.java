package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.bench.cli.Main;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.models.ModelCatalog;

/** Cube decisions drawn from games, played out, and what a judge's answers to them lose. */
class CubeReferenceTest {
    @TempDir
    private Path folder;

    private static CubeReference reference(double noDouble, double take) {
        CubeDecision decision = new CubeDecision(1, Regime.RACE, "2@6 / 2@6", null, 1, "a v b");
        return new CubeReference(decision, 36, 0.5, noDouble, 0.03, take, 0.04, 1);
    }

    private static CubeValues judged(double noDouble, double take) {
        return new CubeValues(true, false, noDouble, take, 1, take);
    }

    /** By hand, in points: half a unit each here. */
    @Test
    void lossesAreThoseOfTheWrongAction() {
        CubeValues roll = judged(0.6, 0.5);
        CubeValues redouble = judged(0.6, 0.7);
        CubeValues tooGood = judged(1.2, 1.5);
        CubeValues cash = judged(0.9, 1.1);
        CubeReference take = reference(0.4, 0.55);
        assertEquals(0.3, take.lostDoubling(roll), 1e-12);
        assertEquals(0, take.lostDoubling(redouble), 1e-12);
        assertEquals(0, take.lostAnswering(roll), 1e-12);
        assertEquals(0.9, take.lostAnswering(cash), 1e-12);
        CubeReference pass = reference(0.9, 1.15);
        assertEquals(0.2, pass.lostDoubling(tooGood), 1e-12);
        assertEquals(0, pass.lostDoubling(cash), 1e-12);
        assertEquals(0.3, pass.lostAnswering(redouble), 1e-12);
        assertEquals(0, pass.lostAnswering(tooGood), 1e-12);
        CubeReference onwards = reference(1.1, 1.3);
        assertEquals(0, onwards.lostDoubling(tooGood), 1e-12);
        assertEquals(0.2, onwards.lostDoubling(cash), 1e-12);
        assertEquals(0.1, take.error(), 1e-12);
        assertEquals(0.06, pass.error(), 1e-12);
    }

    private String run(String... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
        assertEquals(0, code, err.toString());
        return out.toString();
    }

    private void draw(Path file, int each) {
        run(("cube-reference --net fifth --nets fifth --trials 2 --seed 4 --each " + each + " --out " + file)
                .split(" "));
    }

    private static List<CubeReference> read(Path file) throws IOException {
        return JsonLines.read(file, CubeReferenceHeader.class, CubeReference.class)
                .records();
    }

    /** Each decision is one, of the kind that it is said to be; a run that was stopped goes on to the same file. */
    @Test
    void decisionsAreDrawnAndPlayedOut() throws IOException {
        Path file = folder.resolve("cube.jsonl");
        draw(file, 2);
        List<CubeReference> references = read(file);
        assertEquals(2 * Regime.values().length, references.size());
        Map<Regime, Integer> kinds = new EnumMap<>(Regime.class);
        try (Judge judge = new Judge(Knowledge.of(ModelCatalog.shipped().load("fifth")), 1)) {
            for (CubeReference reference : references) {
                CubeDecision decision = reference.decision();
                kinds.merge(decision.regime(), 1, Integer::sum);
                assertEquals(decision.regime(), Regime.of(decision.question().position()));
                Verdict verdict = judge.ask(decision.question(), Effort.STATIC);
                assertTrue(verdict.cube().mayDouble());
                assertEquals(verdict.point(), reference.point(), 1e-5);
                assertEquals(verdict.cube().doublePass(), reference.pass(), 1e-5);
            }
        }
        assertTrue(kinds.values().stream().allMatch(count -> count == 2), kinds.toString());
        assertTrue(references.stream()
                .anyMatch(reference -> "3,3".equals(reference.decision().away())));

        byte[] whole = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(whole, whole.length - 700));
        draw(file, 2);
        assertArrayEquals(whole, Files.readAllBytes(file));

        String[] lines = run("cube-score", "--net", "fifth", "--reference", file.toString())
                .split("\n");
        assertEquals(2 + Regime.values().length + 3, lines.length);
        assertTrue(lines[lines.length - 1].matches("all +12 .*"), lines[lines.length - 1]);
    }
}
