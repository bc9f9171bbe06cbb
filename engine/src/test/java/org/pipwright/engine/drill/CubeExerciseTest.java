package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.position.Position;

class CubeExerciseTest {
    private static CubeExercise question(CubeValues values, double unit, boolean answering, CubeAction weak) {
        return new CubeExercise(
                new Origin.OwnGame(0),
                Position.start(),
                CubeState.START,
                MoneyStakes.USUAL,
                values,
                unit,
                answering,
                weak);
    }

    @Test
    void costsOfDoubling() {
        CubeValues values = new CubeValues(true, false, 0.7, 0.9, 1, 0.9);
        CubeExercise question = question(values, 1, false, CubeAction.ROLL);
        assertEquals(List.of(CubeAction.DOUBLE, CubeAction.ROLL), question.choices());
        assertEquals(CubeAction.DOUBLE, question.best());
        assertEquals(-0.2, question.cost(), 1e-12);
        assertEquals(0.2, question.margin(), 1e-12);
    }

    /** In a match the costs are chances to win it; half a game's worth of them makes a point. */
    @Test
    void costsOfAnsweringInAMatch() {
        CubeValues values = new CubeValues(true, false, 0.6, 0.72, 0.68, 0.72);
        CubeExercise question = question(values, 0.1, true, CubeAction.TAKE);
        assertEquals(List.of(CubeAction.TAKE, CubeAction.PASS), question.choices());
        assertEquals(CubeAction.PASS, question.best());
        assertEquals(-0.4, question.cost(), 1e-12);
        assertEquals(0, question.cost(CubeAction.PASS));
    }
}
