package org.pipwright.engine.reduced;

import java.util.Arrays;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * The six chances of every position of a reduced game when both sides play best, the first of equal plays. Equities are
 * unique, chances are not: equally good plays may win differently. Immutable; shared by threads.
 */
public final class ReducedOutcomes implements PositionEvaluator {
    /** Chances are stored as floats, so smaller changes mean nothing. */
    private static final double SETTLED = 3e-7;

    private final ReducedGame game;
    private final float[] chances;

    private ReducedOutcomes(ReducedGame game, float[] chances) {
        this.game = game;
        this.chances = chances;
    }

    /**
     * Finds the chances by sweeps with the best plays of a table.
     *
     * @param table the solved game
     * @param threads threads to use, at least 1
     * @param progress told of each sweep; changes are those of a chance
     * @return an evaluator; 24 bytes a cell
     */
    public static ReducedOutcomes of(ReducedTable table, int threads, ReducedSolver.Progress progress) {
        ReducedGame game = table.game();
        float[] chances = new float[game.cells() * Outcomes.COUNT];
        int[] planes = new int[Planes.STRIDE];
        for (int side = 1; side < game.sides().size(); side++) {
            game.copyPlanes(game.cell(side, 0), planes, 0);
            FinishedGames.write(planes, 0, chances, game.cell(side, 0) * Outcomes.COUNT);
            game.copyPlanes(game.cell(0, side), planes, 0);
            FinishedGames.write(planes, 0, chances, game.cell(0, side) * Outcomes.COUNT);
        }
        ChanceSweep sweep = new ChanceSweep(game, table.choices(), chances);
        try (Sweeper sweeper = new Sweeper(game.sides(), threads)) {
            double change = 1;
            for (int sweeps = 1; change > SETTLED; sweeps++) {
                change = sweeper.ascending(sweep);
                progress.sweep(sweeps, false, change);
                sweep.leaveRaces();
            }
        }
        return new ReducedOutcomes(game, chances);
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        System.arraycopy(chances, game.cell(planes, at) * Outcomes.COUNT, out, outAt, Outcomes.COUNT);
    }

    /** Replaces the chances of cells by the mean over rolls of those after the chosen play. */
    private static final class ChanceSweep implements RowTask {
        private final ReducedGame game;
        private final Followers followers;
        private final float[] chances;
        private boolean races = true;

        ChanceSweep(ReducedGame game, byte[] choices, float[] chances) {
            this.game = game;
            this.followers = new Followers(game, choices);
            this.chances = chances;
        }

        void leaveRaces() {
            races = false;
        }

        @Override
        public double run(int opponent, int from, int to) {
            Rows rows = new Rows(game.sides(), opponent);
            double[] sums = new double[Outcomes.COUNT];
            double largest = 0;
            for (int me = from; me < to; me++) {
                if (game.playable(me, opponent) && (races || game.contact(me, opponent))) {
                    sum(rows, me, opponent, sums);
                    largest = Math.max(largest, store(sums, game.cell(me, opponent) * Outcomes.COUNT));
                }
            }
            return largest;
        }

        private void sum(Rows rows, int me, int opponent, double[] sums) {
            Arrays.fill(sums, 0);
            int half = Outcomes.COUNT / 2;
            for (Roll roll : Roll.all()) {
                int next = followers.cell(rows, me, opponent, roll.index()) * Outcomes.COUNT;
                for (int k = 0; k < half; k++) {
                    sums[k] += roll.probability() * chances[next + half + k];
                    sums[half + k] += roll.probability() * chances[next + k];
                }
            }
        }

        private double store(double[] sums, int at) {
            double largest = 0;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                largest = Math.max(largest, Math.abs(sums[k] - chances[at + k]));
                chances[at + k] = (float) sums[k];
            }
            return largest;
        }
    }
}
