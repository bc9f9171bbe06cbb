package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.Theme;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.models.ModelCatalog;

class LessonWordsTest {
    private static final Knowledge KNOWLEDGE =
            Knowledge.of(ModelCatalog.shipped().load("fifth"));

    private static String pass(String text) {
        Position position = PositionText.parse(text);
        CubeValues values = new CubeValues(true, false, 0.9, 1.2, 1, 1.2);
        return LessonWords.ofCube(new CubeExercise(
                new Origin.OwnGame(0),
                position,
                CubeState.START,
                new MoneyStakes(true, false),
                values,
                1,
                true,
                CubeAction.TAKE));
    }

    /** A side that has borne off loses no gammon. */
    @Test
    void aPassIsAboutGammonsOnlyWhereTheyCanBeLost() {
        assertTrue(pass("5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24").contains("gammons"));
        assertFalse(pass("3@4 2@2 / 3@6 2@5 2@3").contains("gammons"));
    }

    /** The take of a double from the start position at given stakes. */
    private static String take(Stakes stakes) {
        Outcomes chances = new Outcomes(0.5, 0.1, 0, 0.35, 0.05, 0);
        CubeExercise exercise = new CubeExercise(
                new Origin.OwnGame(0),
                Position.start(),
                CubeState.START,
                stakes,
                KNOWLEDGE.terms(stakes).values(Position.start(), chances, CubeState.START),
                1,
                true,
                CubeAction.PASS);
        assertEquals(CubeAction.TAKE, exercise.best());
        return LessonWords.ofCube(exercise);
    }

    /** A quarter of the games is what a take needs for money, and no more than that. */
    @Test
    void takesAtAScoreAreNotToldByTheQuarterOfMoneyPlay() {
        assertTrue(take(MoneyStakes.USUAL).contains("a quarter of the games"));
        assertTrue(take(new MatchStakes(new MatchScore(4, 6, false))).startsWith("At a match score the take point"));
    }

    @Test
    void aSheetTeachesWhatItIsAbout() {
        List<Motive> leads = List.of(Motive.SPREAD, Motive.PRIME);
        String priming = LessonWords.ofPlay(leads, Theme.PRIMING::about);
        assertEquals(LessonWords.ofPlay(List.of(Motive.PRIME), motive -> true), priming);
        assertNotEquals(LessonWords.ofPlay(leads, motive -> true), priming);
        assertEquals(LessonWords.ofPlay(leads, motive -> true), LessonWords.ofPlay(leads, Theme.ESCAPING::about));
    }
}
