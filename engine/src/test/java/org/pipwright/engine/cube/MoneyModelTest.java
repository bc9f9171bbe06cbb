package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Outcomes;

/** Money values over all chances to win: theory, symmetry, the Jacoby rule. */
@Tag("fast")
class MoneyModelTest {
    private static final CubeState OWNED = new CubeState(2, CubeOwner.ME);
    private static final CubeState THEIRS = new CubeState(2, CubeOwner.THEM);
    private static final MoneyStakes NO_JACOBY = new MoneyStakes(false, false);

    private static GammonShares randomShares(SplittableRandom random) {
        return new GammonShares(
                random.nextDouble() / 2, random.nextDouble() / 10, random.nextDouble() / 2, random.nextDouble() / 10);
    }

    private static MoneyModel constant(MoneyStakes stakes, double x) {
        return new MoneyModel(stakes, CubeEfficiency.constant(x));
    }

    /** An owner behind uses the cube no better than one ahead. */
    private static CubeEfficiency randomEfficiency(SplittableRandom random) {
        double ahead = random.nextDouble();
        return new CubeEfficiency(ahead * random.nextDouble(), ahead);
    }

    /** Keeler and Spencer 1975 for the live cube; 25 % for the dead one is common theory. */
    @ParameterizedTest
    @CsvSource({"0, 0.25, 0.5, 0.5", "1, 0.20, 0.8, 0.8"})
    void theLimitsWithoutGammons(double x, double take, double first, double again) {
        MoneyModel model = constant(MoneyStakes.USUAL, x);
        CubeWindow centred = CubeWindow.of(model.curves(GammonShares.NONE, CubeState.START));
        CubeWindow owned = CubeWindow.of(model.curves(GammonShares.NONE, OWNED));
        assertEquals(take, centred.takePoint(), 1e-6);
        assertEquals(take, owned.takePoint(), 1e-6);
        assertEquals(first, centred.from(), 1e-6);
        assertEquals(again, owned.from(), 1e-6);
        assertEquals(1, centred.to());
    }

    @Test
    void theWindowIsThatOfTheFormulas() {
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 200; i++) {
            GammonShares shares = randomShares(random);
            double x = random.nextDouble();
            TakePointModel formulas = new TakePointModel(shares.winValue(), shares.loseValue(), x);
            CubeWindow window = CubeWindow.of(constant(NO_JACOBY, x).curves(shares, OWNED));
            assertEquals(1 - formulas.cashPoint(), window.takePoint(), 1e-6);
            assertEquals(formulas.redoublePoint(), window.from(), 1e-6);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void valuesAreZeroSumGrowWithTheChanceAndReachTheEnds(boolean jacoby) {
        SplittableRandom random = new SplittableRandom(9);
        for (int i = 0; i < 500; i++) {
            GammonShares shares = randomShares(random);
            MoneyModel model = new MoneyModel(new MoneyStakes(jacoby, false), randomEfficiency(random));
            for (CubeState cube : new CubeState[] {CubeState.START, OWNED, THEIRS}) {
                CubeCurves mine = model.curves(shares, cube);
                CubeCurves theirs = model.curves(shares.swapped(), cube.swapped());
                double last = Double.NEGATIVE_INFINITY;
                for (double p = 0; p <= 1; p += 1.0 / 64) {
                    double value = mine.at(p).noDouble();
                    assertEquals(-theirs.at(1 - p).noDouble(), value, 1e-9);
                    assertTrue(value >= last - 1e-9, "falls at " + p);
                    last = value;
                }
                boolean single = jacoby && cube.owner() == CubeOwner.CENTRE;
                assertEquals(single ? 1 : shares.winValue(), mine.at(1).noDouble(), 1e-9);
                assertEquals(single ? -1 : -shares.loseValue(), mine.at(0).noDouble(), 1e-9);
            }
        }
    }

    @Test
    void accessToTheCubeIsWorthSomething() {
        SplittableRandom random = new SplittableRandom(4);
        for (int i = 0; i < 2000; i++) {
            GammonShares shares = randomShares(random);
            MoneyModel model = new MoneyModel(NO_JACOBY, randomEfficiency(random));
            double p = random.nextDouble();
            double owned = model.curves(shares, OWNED).at(p).best();
            double centred = model.curves(shares, CubeState.START).at(p).best();
            double theirs = model.curves(shares, THEIRS).at(p).best();
            assertTrue(owned >= centred - 1e-9 && centred >= theirs - 1e-9, shares + " at " + p);
        }
    }

    /** The Jacoby rule takes away the reason to play on for a gammon with the cube in the centre. */
    @Test
    void nobodyIsTooGoodToDoubleUnderTheJacobyRule() {
        Outcomes crushing = new Outcomes(0.33, 0.55, 0.08, 0.04, 0, 0);
        assertTrue(constant(NO_JACOBY, 0.7).values(crushing, CubeState.START).tooGood());
        CubeValues jacoby = constant(MoneyStakes.USUAL, 0.7).values(crushing, CubeState.START);
        assertTrue(jacoby.shouldDouble());
        assertEquals(CubeAction.PASS, jacoby.answer());
        assertTrue(constant(MoneyStakes.USUAL, 0.7).values(crushing, OWNED).tooGood());
    }

    @Test
    void aBeaverDoublesTheValueOfATake() {
        MoneyModel model = constant(new MoneyStakes(true, true), 0.7);
        CubeValues values = model.values(new Outcomes(0.45, 0, 0, 0.55, 0, 0), CubeState.START);
        assertEquals(2 * values.doubleTake(), values.doubleBeaver(), 1e-12);
        assertEquals(CubeAction.BEAVER, values.answer());
    }
}
