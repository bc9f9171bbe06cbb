package org.pipwright.bench.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.bench.cli.Main;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.RandomNetworks;

class SievingTest {
    /** Five plays; the deep net likes the last best, which the quick one puts fourth, 0.09 behind. */
    private static final float[] QUICK = {0.30f, 0.28f, -0.50f, 0.25f, 0.21f};

    private static final float[] DEEP = {0.10f, 0.05f, 0.90f, 0.15f, 0.20f};

    private static String row(float within, int most, boolean secondLook) {
        Sieving sieving = new Sieving(within, most, secondLook);
        sieving.add(QUICK, DEEP);
        return sieving.row();
    }

    /** Worked out by hand. */
    @Test
    void countsWhatIsJudgedAndWhatIsLost() {
        assertEquals("| 0.04 | 6 |  | 2.00 | 100.000 % | 0.800000 | 0.800 |", row(0.04f, 6, false));
        assertEquals("| 0.06 | 6 |  | 3.00 | 100.000 % | 0.750000 | 0.750 |", row(0.06f, 6, false));
        assertEquals("| 0.12 | 3 |  | 3.00 | 100.000 % | 0.750000 | 0.750 |", row(0.12f, 3, false));
        assertEquals("| 0.12 | 4 |  | 4.00 | 100.000 % | 0.700000 | 0.700 |", row(0.12f, 4, false));
        assertEquals("| 1.00 | 6 |  | 5.00 | 0.000 % | 0.000000 | 0.000 |", row(1, 6, false));
        // Best as judged 0.10: the two that the quick net puts above it are judged as well.
        assertEquals("| 0.04 | 6 | yes | 4.00 | 100.000 % | 0.700000 | 0.700 |", row(0.04f, 6, true));
    }

    @Test
    void decisionsAddUp() {
        Sieving one = new Sieving(0.04f, 6, false);
        one.add(QUICK, DEEP);
        Sieving all = new Sieving(0.04f, 6, false);
        all.add(one);
        all.add(new float[] {0.2f, 0.1f}, new float[] {0.3f, 0.2f});
        assertEquals(2, all.decisions());
        assertEquals(3.5, all.plays());
        assertEquals("| 0.04 | 6 |  | 1.50 | 50.000 % | 0.400000 | 0.800 |", all.row());
    }

    private static String run(String... words) {
        StringWriter out = new StringWriter();
        assertEquals(0, Main.run(new PrintWriter(out), new PrintWriter(out), words), out::toString);
        return out.toString();
    }

    /** The pair's own games, the same whatever the number of threads; a net before itself loses nothing. */
    @Test
    void theCommandPlaysThePairsGames(@TempDir Path folder) throws Exception {
        Model deep = new Model(RandomNetworks.residual(FeatureSet.PLACES_1, 5, 32, 1), Map.of());
        Path file = folder.resolve("both.safetensors");
        ModelFile.write(file, deep.withQuick(RandomNetworks.residual(FeatureSet.PLACES_1, 6, 32, 1)));
        Path same = folder.resolve("same.safetensors");
        ModelFile.write(same, deep.withQuick(deep.net()));
        List<String> pages = new ArrayList<>();
        for (String threads : List.of("1", "2")) {
            pages.add(run("sieve", "--net", file.toString(), "--decisions", "60", "--threads", threads));
        }
        assertEquals(pages.get(0), pages.get(1));
        assertTrue(pages.get(0).contains("residual 32 x 1, quick residual 32 x 1."), pages.get(0));
        List<String> rows = run("sieve", "--net", same.toString(), "--decisions", "60")
                .lines()
                .filter(line -> line.matches("\\| [0-9].*"))
                .toList();
        assertEquals(Sieving.all().size(), rows.size());
        assertTrue(rows.stream().allMatch(row -> row.endsWith("| 0.000 % | 0.000000 | 0.000 |")), rows::toString);
    }
}
