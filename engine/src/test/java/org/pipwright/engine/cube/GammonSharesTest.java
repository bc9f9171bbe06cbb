package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;

/** Shares of gammons by hand. */
@Tag("fast")
class GammonSharesTest {
    /** Of 50 % wins 25 % are gammons, 12.5 % backgammons; of 50 % losses 12.5 % and 6.25 %: shares are twice that. */
    @Test
    void aShareIsAPartOfTheWinsOrOfTheLosses() {
        float[] chances = {9, 0.125f, 0.25f, 0.125f, 0.3125f, 0.125f, 0.0625f};
        GammonShares shares = GammonShares.of(chances, 1);
        assertEquals(new GammonShares(0.5, 0.25, 0.25, 0.125), shares);
        assertEquals(shares, GammonShares.of(Outcomes.of(chances, 1)));
        assertEquals(2, shares.winValue());
        assertEquals(1.5, shares.loseValue());
    }

    /** Shares of nothing are none. */
    @Test
    void whoNeverWinsHasNoShares() {
        assertEquals(new GammonShares(0, 0, 0.5, 0.5), GammonShares.of(new float[] {0, 0, 0, 0, 0.5f, 0.5f}, 0));
        assertEquals(new GammonShares(0.5, 0.5, 0, 0), GammonShares.of(new float[] {0, 0.5f, 0.5f, 0, 0, 0}, 0));
    }
}
