package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.models.ModelCatalog;

/** Costs in an exercise stand in the unit of the values beside them. */
class GivenAwayTest {
    private static PlayExercise exercise(Question question) {
        try (Judge judge = new Judge(Knowledge.of(ModelCatalog.shipped().load("fifth")), 1)) {
            List<PlayVerdict> plays = judge.ask(question, Effort.lookahead(0)).plays();
            return new PlayExercise(new Origin.Listed("mine.txt", 4), question, plays, plays.get(2));
        }
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    @Test
    void chancesInAMatch() {
        Question opening = Question.of(Position.start(), Roll.of(3, 1));
        PlayExercise exercise = exercise(opening.with(new MatchStakes(new MatchScore(3, 5, false)), CubeState.START));
        List<AnswerRow> rows = AnswerRow.of(exercise);
        assertEquals(
                number(rows.get(2).value()) - number(rows.get(0).value()),
                number(rows.get(2).cost()),
                0.0101,
                "values and costs are in the same unit");
        assertEquals(rows.get(2).cost().substring(1) + " % of the match", GivenAway.by(exercise, exercise.weak()));
        String figures = AnswerLines.of(exercise, new Reasons(List.of("x"), List.of(), "y"))
                .figures();
        assertTrue(figures.contains("gives away " + GivenAway.by(exercise, exercise.weak()) + ": "), figures);
        assertEquals("0.00 % of the match", GivenAway.by(exercise, exercise.best()));
    }

    @Test
    void pointsWithoutOne() {
        PlayExercise exercise = exercise(Question.of(Position.start(), Roll.of(3, 1)));
        AnswerRow third = AnswerRow.of(exercise).get(2);
        assertEquals(third.cost().substring(1) + " points", GivenAway.by(exercise, exercise.weak()));
    }
}
