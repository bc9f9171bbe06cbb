package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Dice;

/** The tables against games played out with them. */
class PlayedOutTest {
    private static final int GAMES = 20_000;

    private final EndgameTables tables = Tables.standard();

    /** Plays the result with the least mean rolls. */
    private static final class LeastMean implements Player {
        private final OneSidedTable table = Tables.oneSided(6, 15);

        @Override
        public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
            int best = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < legal.size(); i++) {
                double mean = table.mean(table.index().of(legal.results(), i * Planes.STRIDE));
                if (mean < least) {
                    least = mean;
                    best = i;
                }
            }
            return best;
        }
    }

    @ParameterizedTest
    @CsvSource({
        "4@1 2@3 3@5 2@6 / 3@1 1@2 5@4 3@6",
        "15@1 / 15@1",
        "2@4 2@5 3@6 / 1@1 3@5 3@6",
        "5@1 / 1@2 1@5",
        "1@6 / 3@4 9@5 3@6"
    })
    void meanMinimisingPlayWinsAsOftenAsTheDistributionsSay(String text) {
        Position position = PositionText.parse(text);
        float[] out = new float[6];
        new RaceChances(tables).write(Basis.DISTRIBUTIONS, position.toPlanes(), 0, out, 0);
        assertShare(out[0] + out[1], position, new LeastMean());
    }

    @ParameterizedTest
    @CsvSource({"3@2 3@6 / 2@3 4@4", "6@6 / 6@6", "1@2 1@5 / 2@1", "2@1 4@5 / 1@2 2@4 2@6"})
    void bestPlayWinsAsOftenAsTheTwoSidedTableSays(String text) {
        Position position = PositionText.parse(text);
        PositionEvaluator none = (planes, at, chances, outAt) -> {
            throw new AssertionError("everything here is covered");
        };
        ExactFirstEvaluator evaluator = new ExactFirstEvaluator(tables, none);
        assertShare(evaluator.evaluate(position).win(), position, new EvaluatingPlayer(evaluator));
    }

    private static void assertShare(double expected, Position position, Player player) {
        GameLoop loop = new GameLoop();
        int wins = 0;
        for (int game = 0; game < GAMES; game++) {
            Dice dice = Dice.ofGame(77, game);
            wins += loop.play(position, null, player, player, dice, dice, TurnListener.NONE) > 0 ? 1 : 0;
        }
        double error = Math.sqrt(expected * (1 - expected) / GAMES);
        assertEquals(expected, wins / (double) GAMES, 4 * error);
    }
}
