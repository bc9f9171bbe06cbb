package org.pipwright.engine.duel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.statistics.RunningMean;

/** Sums, means and errors against their definitions. */
class TallyTest {
    private static RunningMean moments(double[] values) {
        RunningMean moments = RunningMean.NONE;
        for (double value : values) {
            moments = moments.plus(value);
        }
        return moments;
    }

    @Test
    void meanAndErrorFollowTheDefinition() {
        double[] values = new SplittableRandom(4).doubles(1000, -3, 3).toArray();
        double mean = Arrays.stream(values).sum() / 1000;
        double squares = Arrays.stream(values).map(x -> (x - mean) * (x - mean)).sum();
        RunningMean moments = moments(values);
        assertEquals(mean, moments.mean(), 1e-12);
        assertEquals(squares / 999, moments.variance(), 1e-9);
        assertEquals(Math.sqrt(squares / 999 / 1000), moments.standardError(), 1e-9);
    }

    @Test
    void partsAddUp() {
        double[] values = {1, -0.5, 2, 0, 1.5, -3};
        RunningMean parts = moments(Arrays.copyOf(values, 2)).plus(moments(Arrays.copyOfRange(values, 2, 6)));
        RunningMean whole = moments(values);
        assertEquals(whole.count(), parts.count());
        assertEquals(whole.mean(), parts.mean(), 1e-15);
        assertEquals(whole.spread(), parts.spread(), 1e-14);
        assertEquals(whole, whole.plus(RunningMean.NONE));
        assertEquals(whole, RunningMean.NONE.plus(whole));
        assertEquals(new Wins(1, 2, 1, 3, 15), new Wins(0, 1, 1, 0, 3).plus(new Wins(1, 1, 0, 3, 12)));
    }

    @Test
    void nothingIsKnownOfNothing() {
        assertEquals(0, RunningMean.NONE.mean());
        assertEquals(0, RunningMean.NONE.standardError());
        assertEquals(0, moments(new double[] {2}).standardError());
        assertEquals(1, Tally.NONE.varianceReduction());
    }

    @Test
    void winsAreCountedByWorth() {
        Wins wins = Wins.NONE.plus(1).plus(2).plus(2).plus(3);
        assertEquals(new Wins(0, 1, 2, 1, 8), wins);
        assertEquals(4, wins.total());
        assertEquals(8, wins.points());
    }

    @Test
    void reductionIsTheRatioOfVariances() {
        Tally tally = new Tally(
                moments(new double[] {2, -2}), moments(new double[] {1, -1}), Wins.NONE, Wins.NONE, CubeUse.NONE, 0);
        assertEquals(4, tally.varianceReduction());
        assertEquals(tally.adjusted(), tally.best());
    }

    @Test
    void settingsAreChecked() {
        Position finished = PositionText.parse("off / 1@3");
        assertThrows(IllegalArgumentException.class, () -> DuelSettings.fullGames(0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Contest.Cubeless(finished, false));
    }
}
