package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/** The quick values of match terms against the model solved for each position's own shares. */
class MatchTermsTest {
    private static final int CASES = 150;

    @ParameterizedTest
    @CsvSource({
        "1, 3, false",
        "2, 1, false",
        "3, 1, false",
        "4, 1, true",
        "2, 2, false",
        "2, 4, false",
        "4, 2, false",
        "3, 3, false",
        "5, 5, false",
        "7, 3, false",
        "15, 15, false"
    })
    void quickValuesAreCloseToTheModel(int mine, int theirs, boolean crawford) {
        SplittableRandom random = new SplittableRandom(mine * 100 + theirs);
        MatchTerms terms =
                new MatchTerms(new MatchStakes(new MatchScore(mine, theirs, crawford)), ShippedMatchTable.load());
        double squares = 0;
        for (int i = 0; i < CASES; i++) {
            CubeOwner owner = CubeOwner.values()[crawford ? 0 : random.nextInt(3)];
            CubeState cube = owner == CubeOwner.CENTRE ? CubeState.START : new CubeState(2 << random.nextInt(2), owner);
            Outcomes outcomes = outcomes(random);
            CubeValues exact = terms.curves(Position.start(), GammonShares.of(outcomes), cube)
                    .at(outcomes.win());
            CubeValues quick = terms.values(Position.start(), outcomes, cube);
            assertEquals(exact.mayDouble(), quick.mayDouble());
            assertEquals(exact.doublePass(), quick.doublePass(), 1e-12);
            assertEquals(exact.noDouble(), quick.noDouble(), 0.01, outcomes + " " + cube);
            assertEquals(exact.doubleTake(), quick.doubleTake(), 0.01, outcomes + " " + cube);
            squares += Math.pow(exact.noDouble() - quick.noDouble(), 2);
        }
        assertTrue(Math.sqrt(squares / CASES) < 0.001, "root mean square " + Math.sqrt(squares / CASES));
    }

    /** Chances such as occur: up to half of the games gammons, few backgammons. */
    private static Outcomes outcomes(SplittableRandom random) {
        double win = random.nextDouble(0.05, 0.95);
        double gammon = random.nextDouble(0.5);
        double backgammon = random.nextDouble(0.05);
        double lostGammon = random.nextDouble(0.5);
        double lostBackgammon = random.nextInt(2) * random.nextDouble(0.05);
        return new Outcomes(
                win * (1 - gammon - backgammon),
                win * gammon,
                win * backgammon,
                (1 - win) * (1 - lostGammon - lostBackgammon),
                (1 - win) * lostGammon,
                (1 - win) * lostBackgammon);
    }
}
