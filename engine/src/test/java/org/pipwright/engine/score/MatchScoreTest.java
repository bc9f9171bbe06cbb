package org.pipwright.engine.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Scores of matches and the Crawford sequence. */
@Tag("fast")
class MatchScoreTest {
    @ParameterizedTest
    @CsvSource({
        // before -> points -> after
        "5, 5, false, 1, 4, 5, false",
        "5, 5, false, -2, 5, 3, false",
        "5, 3, false, 4, 1, 3, true",
        "3, 2, false, -1, 3, 1, true",
        "1, 3, true, -1, 1, 2, false",
        "1, 2, false, -1, 1, 1, false",
        "4, 1, true, 2, 2, 1, false",
        "4, 1, true, 3, 1, 1, false",
        "4, 1, false, 2, 2, 1, false",
    })
    void aGameLeadsToTheNextScore(
            int mine, int theirs, boolean crawford, int points, int myNext, int theirNext, boolean crawfordNext) {
        MatchScore before = new MatchScore(mine, theirs, crawford);
        MatchScore after = new MatchScore(myNext, theirNext, crawfordNext);
        assertEquals(after, before.after(points));
        assertEquals(after.swapped(), before.swapped().after(-points));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 7, 11, 25})
    void theCrawfordGameComesOnceUnlessTheMatchEndsBeforeIt(int length) {
        SplittableRandom random = new SplittableRandom(length);
        int withCrawford = 0;
        for (int match = 0; match < 2000; match++) {
            MatchScore score = MatchScore.ofLength(length);
            int crawfordGames = 0;
            int myPoints = 0;
            int theirPoints = 0;
            while (true) {
                boolean someoneNear = myPoints == length - 1 || theirPoints == length - 1;
                // The Crawford game is the first with a side at one point away, in matches of more than a point.
                assertEquals(length > 1 && someoneNear && crawfordGames == 0, score.crawford());
                assertEquals(
                        length > 1 && someoneNear && !score.crawford() && myPoints != theirPoints,
                        score.postCrawford());
                crawfordGames += score.crawford() ? 1 : 0;
                int points = (1 + random.nextInt(3)) << (score.crawford() ? 0 : random.nextInt(3));
                boolean mine = random.nextBoolean();
                int signed = mine ? points : -points;
                if (mine) {
                    myPoints += points;
                } else {
                    theirPoints += points;
                }
                assertEquals(Math.max(myPoints, theirPoints) >= length, score.ends(signed));
                if (score.ends(signed)) {
                    break;
                }
                score = score.after(signed);
                assertEquals(length - myPoints, score.mine());
                assertEquals(length - theirPoints, score.theirs());
            }
            withCrawford += crawfordGames;
        }
        assertTrue(length == 1 ? withCrawford == 0 : withCrawford > 150, "Crawford games " + withCrawford);
    }

    @ParameterizedTest
    @CsvSource({"0, 3, false", "3, 0, false", "-1, 1, false", "1001, 3, false", "2, 3, true", "1, 1, true"})
    void impossibleScoresAreRefused(int mine, int theirs, boolean crawford) {
        assertThrows(IllegalArgumentException.class, () -> new MatchScore(mine, theirs, crawford));
    }

    @Test
    void noScoreFollowsTheEndOfAMatchOrAGameWithoutPoints() {
        MatchScore score = new MatchScore(2, 3, false);
        assertThrows(IllegalArgumentException.class, () -> score.after(0));
        assertThrows(IllegalArgumentException.class, () -> score.after(2));
        assertThrows(IllegalArgumentException.class, () -> score.after(-3));
        assertFalse(score.ends(-2));
    }
}
