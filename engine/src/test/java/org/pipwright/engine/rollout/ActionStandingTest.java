package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.rollout.ActionStanding.Clarity;
import org.pipwright.engine.rollout.ActionStanding.Kind;

/** When the cube actions of a position are known well enough, and what each costs. */
class ActionStandingTest {
    private static final ActionStanding.Asked MONEY = new ActionStanding.Asked(true, false, 1, 1);

    /** Trials whose values lie alternately above and below a mean; those of different candidates are not related. */
    private static Moments moments(int trials, double spread, double... means) {
        Moments moments = MomentsTest.independent(means.length, WorthMeasure.NUMBERS);
        double[] results = new double[means.length * WorthMeasure.NUMBERS];
        for (int i = 0; i < trials; i++) {
            for (int c = 0; c < means.length; c++) {
                double off = (i >> c & 1) == 0 ? spread : -spread;
                results[c * WorthMeasure.NUMBERS + Moments.VALUE] = means[c] + off;
                results[c * WorthMeasure.NUMBERS + Moments.PLAIN] = means[c] + 2 * off;
            }
            moments.add(results, 0, WorthMeasure.NUMBERS, 0);
        }
        return moments;
    }

    private static Clarity clarity(ActionStanding standing, Kind kind) {
        return standing.choice(kind).clarity();
    }

    /** Doubling may be clear long before the answer is: 0.9865 with an error of 0.02 says nothing about 1. */
    @Test
    void aClearDoubleWithAnOpenAnswerIsNotSettled() {
        ActionStanding few = ActionStanding.of(moments(36, 0.12, 0.55, 0.9865), MONEY, 3);
        assertEquals(0.02, few.choice(Kind.TAKE_OR_PASS).difference().standardError(), 0.001);
        assertEquals(Clarity.CLEAR, clarity(few, Kind.DOUBLE_OR_ROLL));
        assertEquals(Clarity.OPEN, clarity(few, Kind.TAKE_OR_PASS));
        assertFalse(few.settled());
        ActionStanding many = ActionStanding.of(moments(3600, 0.12, 0.55, 0.9865), MONEY, 3);
        assertEquals(Clarity.CLEAR, clarity(many, Kind.TAKE_OR_PASS));
        assertTrue(many.settled());
    }

    @Test
    void whatLiesWithinAHundredthOfIndifferenceIsKnownWellEnough() {
        ActionStanding close = ActionStanding.of(moments(36_000, 0.12, 0.55, 0.999), MONEY, 3);
        assertEquals(Clarity.CLOSE, clarity(close, Kind.TAKE_OR_PASS));
        assertTrue(close.settled());
        ActionStanding inAMatch =
                ActionStanding.of(moments(36_000, 0.12, 0.55, 0.999), new ActionStanding.Asked(true, false, 1, 0.1), 3);
        assertEquals(Clarity.OPEN, clarity(inAMatch, Kind.TAKE_OR_PASS), "a point is worth a tenth there");
    }

    /** Against a pass it is the pass that rolling is compared with, however much the double would be worth taken. */
    @ParameterizedTest
    @CsvSource({"0.70, 1.5, CLEAR, -0.3", "1.30, 1.5, CLEAR, 0", "0.99, 1.5, OPEN, -0.01"})
    void tooGoodOrNot(double roll, double take, Clarity expected, double cost) {
        Moments moments = moments(3600, 0.6, roll, take);
        ActionStanding standing = ActionStanding.of(moments, MONEY, 3);
        assertEquals(expected, clarity(standing, Kind.DOUBLE_OR_ROLL));
        assertEquals(1 - roll, standing.choice(Kind.DOUBLE_OR_ROLL).difference().mean(), 1e-9);
        Estimate costOfRolling = ActionStanding.cost(moments, ActionStanding.ROLL, standing.values());
        assertEquals(cost, costOfRolling.mean(), 1e-9);
        assertEquals(cost == 0 ? 0 : 0.01, costOfRolling.standardError(), 1e-4);
        Estimate costOfTaking = ActionStanding.cost(moments, ActionStanding.TAKE, standing.values());
        assertEquals(-0.5, costOfTaking.mean(), 1e-9);
    }

    @Test
    void aBeaverIsAChoiceOfItsOwn() {
        ActionStanding standing =
                ActionStanding.of(moments(3600, 0.1, 0.1, -0.1, -0.2), new ActionStanding.Asked(true, true, 1, 1), 3);
        assertEquals(Clarity.CLEAR, clarity(standing, Kind.BEAVER_OR_TAKE));
        assertEquals(-0.3, standing.choice(Kind.DOUBLE_OR_ROLL).difference().mean(), 1e-9);
        assertTrue(standing.settled());
    }

    @Test
    void whereNothingIsAskedNothingIsSettled() {
        assertFalse(ActionStanding.of(moments(360, 0.1, 0.5, 0.7), MONEY, 0).settled());
        ActionStanding owned =
                ActionStanding.of(moments(360, 0.1, 0.5), new ActionStanding.Asked(false, false, 1, 1), 3);
        assertFalse(owned.settled());
        assertTrue(owned.choices().isEmpty());
    }

    /** Rounding is no variance: neither of what is left once all luck is off, nor of games that all end alike. */
    @Test
    void whatLuckTookOffIsAFactorOrAllOrNothing() {
        assertEquals(4, moments(36, 0.1, 0).reduction(0), 1e-9);
        Moments all = MomentsTest.independent(2, WorthMeasure.NUMBERS);
        for (int i = 0; i < 36; i++) {
            double rounding = i % 2 * 1e-8;
            all.add(
                    new double[] {0.5 + rounding, i % 2, 0, 0, 0, 0.5 + rounding, 0.5 - rounding / 3, 0, 0, 0},
                    0,
                    5,
                    0);
        }
        assertEquals(Double.POSITIVE_INFINITY, all.reduction(0));
        assertTrue(Double.isNaN(all.reduction(1)));
    }
}
