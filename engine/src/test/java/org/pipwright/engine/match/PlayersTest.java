package org.pipwright.engine.match;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.RandomBoards;
import org.pipwright.engine.roll.Dice;

/** What each player chooses, from the definitions, and that choices among equals are spread evenly. */
class PlayersTest {
    private static final int DRAWS = 60_000;

    private final PlayGenerator generator = new PlayGenerator();
    private final Dice ties = Dice.ofGame(3, 1);

    private NaiveBoard result(int index) {
        return NaiveBoard.ofPlanes(generator.results(), index * Planes.STRIDE);
    }

    private static int lead(NaiveBoard board) {
        return NaiveRules.pips(board.swapped()) - NaiveRules.pips(board);
    }

    @Test
    void pipLeaderTakesTheLargestLead() {
        Player leader = new PipLeader();
        int[] choices = new int[2];
        RandomBoards.of(51, 3000).forEach(board -> {
            int count = generator.generate(board.toPlanes(), 0, 5, 3);
            int chosen = leader.choose(board.toPlanes(), 0, generator, ties);
            int least = Integer.MAX_VALUE;
            for (int i = 0; i < count; i++) {
                assertTrue(lead(result(i)) <= lead(result(chosen)), board::toString);
                least = Math.min(least, lead(result(i)));
            }
            choices[least < lead(result(chosen)) ? 1 : 0]++;
        });
        assertTrue(choices[1] > 300, "too few boards on which the lead depends on the play: " + choices[1]);
    }

    /**
     * Chi-square of counts that should be equal, compared with its 99.9 % point by the Wilson-Hilferty formula (Wilson and
     * Hilferty, Proc. Nat. Acad. Sci. 17 (1931), 684-688; from memory). The seed is fixed, so this passes always or never.
     */
    private static void requireEven(Map<Integer, Integer> counts, int cells) {
        assertEquals(cells, counts.size(), "every one of the equals comes up");
        double mean = (double) DRAWS / cells;
        double chi = 0;
        for (int count : counts.values()) {
            chi += (count - mean) * (count - mean) / mean;
        }
        double d = 2.0 / (9 * (cells - 1));
        double limit = (cells - 1) * Math.pow(1 - d + 3.09 * Math.sqrt(d), 3);
        assertTrue(chi < limit, "chi-square " + chi + " with " + (cells - 1) + " degrees, limit " + limit);
    }

    @Test
    void pipLeaderBreaksTiesEvenly() {
        int[] planes = PositionText.parse("start").toPlanes();
        int count = generator.generate(planes, 0, 4, 2);
        int most = Integer.MIN_VALUE;
        int equals = 0;
        for (int i = 0; i < count; i++) {
            equals = lead(result(i)) > most ? 1 : equals + (lead(result(i)) == most ? 1 : 0);
            most = Math.max(most, lead(result(i)));
        }
        assertTrue(equals > 5, "a case with many equals");
        requireEven(draw(new PipLeader(), planes), equals);
    }

    @Test
    void randomPlayerTakesEachPlayEvenly() {
        int[] planes = PositionText.parse("start").toPlanes();
        int count = generator.generate(planes, 0, 6, 4);
        requireEven(draw(new RandomPlayer(), planes), count);
    }

    private Map<Integer, Integer> draw(Player player, int[] planes) {
        Map<Integer, Integer> counts = new HashMap<>();
        for (int i = 0; i < DRAWS; i++) {
            counts.merge(player.choose(planes, 0, generator, ties), 1, Integer::sum);
        }
        return counts;
    }

    /** Likes checkers borne off, and gives each result chances that can be told apart. */
    private static final PositionEvaluator PIPS = (planes, at, out, outAt) -> {
        float share = 1 / (1 + Planes.pips(planes, at) / 400f + Planes.pips(planes, at + Planes.SIDE) / 4e4f);
        Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
        out[outAt] = share;
        out[outAt + 3] = 1 - share;
    };

    @Test
    void evaluatingPlayerTakesTheHighestEquity() {
        EvaluatingPlayer player = new EvaluatingPlayer(PIPS);
        RandomBoards.of(52, 1000).forEach(board -> {
            int count = generator.generate(board.toPlanes(), 0, 6, 1);
            int chosen = player.choose(board.toPlanes(), 0, generator, ties);
            int best = 0;
            double highest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < count; i++) {
                double equity = equity(result(i));
                if (equity > highest) {
                    highest = equity;
                    best = i;
                }
            }
            assertEquals(best, chosen, board::toString);
            assertEquals(highest, Outcomes.of(player.chancesOfChoice(), 0).equity(), 1e-6);
        });
    }

    /** Equity of the mover after a play: less what the other side, now on roll, has. */
    private static double equity(NaiveBoard result) {
        if (NaiveRules.allOff(result)) {
            return NaiveRules.pointsLost(result.swapped());
        }
        float[] out = new float[Outcomes.COUNT];
        PIPS.evaluate(result.swapped().toPlanes(), 0, out, 0);
        return out[3] - out[0];
    }

    @Test
    void evaluatingPlayerTakesTheFirstOfEquals() {
        PositionEvaluator same = (planes, at, out, outAt) ->
                System.arraycopy(new float[] {0.5f, 0, 0, 0.5f, 0, 0}, 0, out, outAt, Outcomes.COUNT);
        EvaluatingPlayer player = new EvaluatingPlayer(same);
        int[] planes = PositionText.parse("start").toPlanes();
        generator.generate(planes, 0, 4, 2);
        assertEquals(0, player.choose(planes, 0, generator, ties));
        assertArrayEquals(new float[] {0.5f, 0, 0, 0.5f, 0, 0}, player.chancesOfChoice());
    }

    /** More plays than the player's buffer starts with room for. */
    @Test
    void evaluatingPlayerCopesWithManyPlays() {
        int[] planes = PositionText.parse(
                        "1@24 1@23 1@22 1@21 1@20 1@19 1@18 1@17 1@16 1@15 1@14 1@13 1@12 1@11 1@10 / 15@24")
                .toPlanes();
        int count = generator.generate(planes, 0, 1, 1);
        assertTrue(count > 256, count + " plays");
        int chosen = new EvaluatingPlayer(PIPS).choose(planes, 0, generator, ties);
        assertTrue(chosen >= 0 && chosen < count);
    }
}
