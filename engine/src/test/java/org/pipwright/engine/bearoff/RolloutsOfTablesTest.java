package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.RandomModels;

/** Rollouts that judge by the exact two-sided table must agree with it. */
class RolloutsOfTablesTest {
    private static final int POSITIONS = 200;

    /** The table keeps values in steps, and chances pass through float. */
    private static final double ROUNDING = 2e-4;

    private final EndgameTables tables = Tables.standard();

    private Judgement judgement() {
        return Judgement.by(new ExactFirstEvaluator(tables, new NetworkEvaluator(RandomModels.of(1, 16))));
    }

    /** One to six checkers a side at home, neither side hopeless, so that no chance hangs on rare events. */
    private List<Position> covered(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Position> positions = new ArrayList<>();
        while (positions.size() < POSITIONS) {
            Position position = Position.of(side(random), side(random));
            if (Math.abs(exact(position)) < 0.8) {
                positions.add(position);
            }
        }
        return positions;
    }

    private static int[] side(SplittableRandom random) {
        int[] side = new int[26];
        int left = 1 + random.nextInt(6);
        side[0] = 15 - left;
        for (int c = 0; c < left; c++) {
            side[1 + random.nextInt(6)]++;
        }
        return side;
    }

    private double exact(Position position) {
        return new ExactFirstEvaluator(tables, new NetworkEvaluator(RandomModels.of(1, 16)))
                .evaluate(position)
                .equity();
    }

    private RolloutLine rollout(Position position, RolloutSettings settings) {
        try (Rollouts rollouts = new Rollouts(this::judgement, settings, 1)) {
            return rollouts.odds(position, WorkFile.NONE, RolloutListener.NONE)
                    .lines()
                    .get(0);
        }
    }

    /**
     * With luck left in: about one estimate in 370 may be beyond 3 standard errors, and the squares of errors in units of
     * them average 1, give or take 0.1, or less where stratification helps.
     */
    @Test
    void plainEstimatesAgreeWithinTheirErrors() {
        double squares = 0;
        int beyond = 0;
        long seed = 0;
        for (Position position : covered(31)) {
            RolloutSettings settings =
                    RolloutSettings.DEFAULT.withTrials(144).withSeed(seed++).withLuckAdjusted(false);
            Estimate equity = rollout(position, settings).value();
            double z = (equity.mean() - exact(position)) / equity.standardError();
            squares += z * z;
            beyond += Math.abs(z) > 3 ? 1 : 0;
        }
        assertTrue(beyond <= 3, beyond + " of " + POSITIONS + " beyond 3 standard errors");
        assertTrue(squares / POSITIONS < 1.3, "mean square error in standard errors: " + squares / POSITIONS);
    }

    /** With the luck taken off nothing is left to chance: each game gives the exact value. */
    @Test
    void withTheLuckTakenOffEachGameIsExact() {
        for (Position position : covered(32)) {
            RolloutLine line = rollout(position, RolloutSettings.DEFAULT.withTrials(36));
            assertEquals(exact(position), line.value().mean(), ROUNDING, position::toString);
            assertTrue(line.value().standardError() < ROUNDING, line::toString);
        }
    }
}
