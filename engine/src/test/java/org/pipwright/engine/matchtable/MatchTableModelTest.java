package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.score.MatchScore;

/** The recursion over games against tables computed elsewhere with the same assumptions. */
class MatchTableModelTest {
    private static final double GAMMONS = 0.26;
    private static final GammonShares SHARES = new GammonShares(GAMMONS, 0, GAMMONS, 0);
    private static final int LENGTH = 9;

    /** Walks of single steps, the cube in use before the first roll: the other program's assumptions. */
    @ParameterizedTest
    @CsvSource({"20, 3, 3, 4", "100, 4, 5, 6"})
    void theCubeWalkAgrees(int cells, int fullColumn, int crawfordColumn, int postColumn) throws IOException {
        CubeWalk walk = new CubeWalk(cells, 1);
        MatchTable table = MatchTableBuilder.build(LENGTH, GAMMONS, 0, walk, walk, true);
        int checked = 0;
        for (String[] row : TestTable.rows("model-scores.tsv")) {
            int a = Integer.parseInt(row[0]);
            int b = Integer.parseInt(row[1]);
            boolean crawford = (a == 1) != (b == 1);
            assertEquals(Double.parseDouble(row[fullColumn]), table.chance(new MatchScore(a, b, crawford)), 1e-8);
            checked++;
        }
        for (String[] row : TestTable.rows("model-crawford.tsv")) {
            int n = Integer.parseInt(row[0]);
            assertEquals(Double.parseDouble(row[crawfordColumn]), table.chance(new MatchScore(n, 1, n > 1)), 1e-9);
            assertEquals(Double.parseDouble(row[postColumn]), table.chance(new MatchScore(n, 1, false)), 1e-9);
            checked++;
        }
        assertEquals(LENGTH * LENGTH + LENGTH, checked);
    }

    /** Without a cube the Crawford rule is empty, so that a game at 1-away is like any other. */
    @Test
    void theCubelessTableAgrees() throws IOException {
        MatchTable table = closed(game -> even(game, CubeState.START), game -> even(game, CubeState.START));
        for (String[] row : TestTable.rows("model-scores.tsv")) {
            int a = Integer.parseInt(row[0]);
            int b = Integer.parseInt(row[1]);
            double expected = Double.parseDouble(row[2]);
            assertEquals(expected, table.chance(new MatchScore(a, b, false)), 1e-8);
            assertEquals(expected, table.chance(new MatchScore(a, b, (a == 1) != (b == 1))), 1e-8);
        }
    }

    /** After the Crawford game the trailer doubles at once and is taken; with even chances the leader has no better. */
    @Test
    void theClosedRecursionAgrees() throws IOException {
        MatchTable table =
                closed(game -> even(game, new CubeState(2, CubeOwner.THEM)), game -> even(game, CubeState.START));
        for (String[] row : TestTable.rows("model-crawford.tsv")) {
            int n = Integer.parseInt(row[0]);
            assertEquals(Double.parseDouble(row[1]), table.chance(new MatchScore(n, 1, n > 1)), 1e-9);
            assertEquals(Double.parseDouble(row[2]), table.chance(new MatchScore(n, 1, false)), 1e-9);
        }
    }

    private static double even(MatchPayoffs game, CubeState cube) {
        return (game.played(true, cube) + game.played(false, cube)) / 2;
    }

    /** A table by a closed formula for each game: after the Crawford game, and for all others. */
    private static MatchTable closed(
            ToDoubleFunction<MatchPayoffs> postCrawfordGame, ToDoubleFunction<MatchPayoffs> game) {
        double[][] chances = new double[LENGTH + 1][LENGTH + 1];
        double[] post = new double[LENGTH + 1];
        for (double[] row : chances) {
            Arrays.fill(row, 0.5);
        }
        Arrays.fill(post, 0.5);
        for (int n = 2; n <= LENGTH; n++) {
            MatchTable known = MatchTable.unfinished(chances, post);
            post[n] = postCrawfordGame.applyAsDouble(new MatchPayoffs(known, new MatchScore(n, 1, false), SHARES));
        }
        for (int sum = 3; sum <= 2 * LENGTH; sum++) {
            for (int a = Math.max(1, sum - LENGTH); 2 * a < sum; a++) {
                MatchTable known = MatchTable.unfinished(chances, post);
                MatchScore score = new MatchScore(a, sum - a, a == 1);
                chances[a][sum - a] = game.applyAsDouble(new MatchPayoffs(known, score, SHARES));
                chances[sum - a][a] = 1 - chances[a][sum - a];
            }
        }
        return new MatchTable(chances, post);
    }
}
