package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.score.MatchScore;

/** Gammon values by hand. */
@Tag("fast")
class GammonValuesTest {
    private static final MatchTable TABLE = ShippedMatchTable.load();

    private static GammonValues at(int mine, int theirs, boolean crawford, CubeState cube) {
        return GammonValues.of(new MatchTerms(new MatchStakes(new MatchScore(mine, theirs, crawford)), TABLE), cube)
                .orElseThrow();
    }

    @Test
    void moneyIsOneHalfOnceTheCubeIsTurnedOrWithoutJacoby() {
        CubeState turned = new CubeState(2, CubeOwner.ME);
        assertEquals(
                new GammonValues(0.5, 0.5),
                GammonValues.of(new MoneyTerms(MoneyStakes.USUAL, null), turned).orElseThrow());
        assertEquals(
                new GammonValues(0, 0),
                GammonValues.of(new MoneyTerms(MoneyStakes.USUAL, null), CubeState.START)
                        .orElseThrow());
        assertEquals(
                new GammonValues(0.5, 0.5),
                GammonValues.of(new MoneyTerms(new MoneyStakes(false, false), null), CubeState.START)
                        .orElseThrow());
    }

    @Test
    void whoNeedsOnePointHasNoUseForGammons() {
        GammonValues last = at(1, 1, false, CubeState.START);
        assertEquals(new GammonValues(0, 0), last);
        // 2-away in the Crawford game: a single game leads to 1-away each (0.5), a gammon wins, a loss loses.
        GammonValues crawford = at(2, 1, true, CubeState.START);
        assertEquals((1 - 0.5) / (0.5 - 0), crawford.mine(), 1e-9);
        assertEquals(0, crawford.theirs(), 1e-9);
    }

    /** At 2-away against 2-away: a single game leads to 1-away against 2-away, a gammon wins the match. */
    @Test
    void bothSidesAtTwoAwayAreAlike() {
        double ahead = TABLE.chance(new MatchScore(1, 2, true));
        GammonValues values = at(2, 2, false, CubeState.START);
        assertEquals((1 - ahead) / (ahead - (1 - ahead)), values.mine(), 1e-9);
        assertEquals(values.mine(), values.theirs(), 1e-9);
    }

    /** The classical case for a gammon: 4-away against 2-away with the cube on 2; nobody else needs it so much. */
    @Test
    void theTrailerAtFourAwayWithACubeOnTwoNeedsGammons() {
        GammonValues values = at(4, 2, false, new CubeState(2, CubeOwner.THEM));
        assertTrue(values.mine() > 0.9, "" + values);
        assertEquals(0, values.theirs(), 1e-9);
    }
}
