package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

class RaceChancesTest {
    private static final double STORED = 1e-6;

    static List<List<String>> home() throws IOException {
        return rows(6);
    }

    static List<List<String>> rows(int points) throws IOException {
        return CheckRows.of("race-win-chance.tsv").stream()
                .filter(row -> Integer.parseInt(row.get(0)) == points)
                .toList();
    }

    @Test
    void rowsAreComplete() throws IOException {
        assertEquals(32, home().size());
        assertEquals(10, rows(8).size());
        assertEquals(10, rows(9).size());
    }

    @ParameterizedTest
    @MethodSource("home")
    void rows(List<String> row) {
        check(Tables.standard(), row);
    }

    /** Checks a row against its own method, both sides minimising their means. */
    static void check(EndgameTables tables, List<String> row) {
        Position position = CheckRows.position(row.get(1), row.get(2));
        Outcomes found = fromDistributions(tables, position.toPlanes());
        assertEquals(Double.parseDouble(row.get(5)), found.win(), STORED);
        assertEquals(Double.parseDouble(row.get(7)), found.winGammon(), STORED);
        assertEquals(Double.parseDouble(row.get(9)), found.loseGammon(), STORED);
        assertEquals(0, found.winBackgammon());
        assertEquals(0, found.loseBackgammon());
    }

    private static Outcomes fromDistributions(EndgameTables tables, int[] planes) {
        float[] out = new float[Outcomes.COUNT];
        new RaceChances(tables).write(Basis.DISTRIBUTIONS, planes, 0, out, 0);
        return Outcomes.of(out, 0);
    }

    /** The sums written out over both numbers of rolls, for random pairs, in any order of pairs. */
    @Test
    void equalsTheDoubleSum() {
        OneSidedTable table = Tables.oneSided(6, 15);
        RaceChances races = new RaceChances(Tables.standard());
        SplittableRandom random = new SplittableRandom(5);
        float[] out = new float[Outcomes.COUNT];
        int gammons = 0;
        for (int n = 0; n < 3000; n++) {
            int[] planes = new int[Planes.STRIDE];
            int mine = arrangement(random, table.index(), planes, 0);
            int theirs = arrangement(random, table.index(), planes, Planes.SIDE);
            races.write(Basis.DISTRIBUTIONS, planes, 0, out, 0);
            double[] expected = doubleSum(table, mine, theirs, planes);
            for (int k = 0; k < Outcomes.COUNT; k++) {
                assertEquals(expected[k], out[k], 1e-6);
            }
            gammons += out[1] > 0 || out[4] > 0 ? 1 : 0;
        }
        assertTrue(gammons > 100, gammons + " positions with gammons");
    }

    private static double[] doubleSum(OneSidedTable table, int mine, int theirs, int[] planes) {
        double[] chances = new double[Outcomes.COUNT];
        RollSpread mineAll = table.rolls(mine);
        RollSpread mineFirst = table.rollsToFirst(mine);
        RollSpread theirsAll = table.rolls(theirs);
        RollSpread theirsFirst = table.rollsToFirst(theirs);
        for (int me = 1; me <= 40; me++) {
            for (int they = 1; they <= 40; they++) {
                chances[me <= they ? 0 : 3] += mineAll.exactly(me) * theirsAll.exactly(they);
                if ((planes[Planes.SIDE] & 1) == 0 && they > me - 1) {
                    chances[1] += mineAll.exactly(me) * theirsFirst.exactly(they);
                }
                if ((planes[0] & 1) == 0 && me > they) {
                    chances[4] += theirsAll.exactly(they) * mineFirst.exactly(me);
                }
            }
        }
        chances[0] -= chances[1];
        chances[3] -= chances[4];
        return chances;
    }

    /** A random arrangement; some of few checkers, every third with none off. */
    private static int arrangement(SplittableRandom random, SideIndex index, int[] planes, int at) {
        int arrangement = 1 + random.nextInt(random.nextInt(3) == 0 ? 900 : index.size() - 1);
        index.write(arrangement, planes, at);
        if (random.nextInt(3) > 0) {
            Planes.add(planes, at, Planes.OFF);
        }
        return arrangement;
    }

    @ParameterizedTest
    @MethodSource("home")
    void simulatedRowsAgree(List<String> row) {
        if (row.get(10).isEmpty() || Integer.parseInt(row.get(12)) == 0) {
            return;
        }
        int games = Integer.parseInt(row.get(12));
        double win = fromDistributions(
                        Tables.standard(),
                        CheckRows.position(row.get(1), row.get(2)).toPlanes())
                .win();
        double error = Math.sqrt(win * (1 - win) / games);
        assertEquals(win, Double.parseDouble(row.get(10)), 4 * error + 1e-6);
    }
}
