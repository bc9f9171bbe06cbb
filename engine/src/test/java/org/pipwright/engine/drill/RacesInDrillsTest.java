package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** Exercises have the answers that every other command gives in races. */
class RacesInDrillsTest {
    private static final EndgameTables TABLES = EndgameTables.of(
            OneSidedTable.build(EndgameTables.HOME, 1, TableProgress.NONE),
            TwoSidedTable.build(new SideIndex(6, 2), 1, TableProgress.NONE));

    @Test
    void answersInRacesAreSimulated() {
        Moment moment = new Moment(PositionText.parse("7@6 5@5 2@8 1@13 / 5@8 4@7 3@6 3@4"), Roll.parse("6-2"));
        DrillSettings settings = new DrillSettings(Theme.BEARING_IN, 1, 1, new Clarity(1e-9, 1e-9, 0, true), 4, 10);
        Knowledge knowledge = Knowledge.of(LeaningEvaluator::new).with(TABLES);
        try (Judge judge = new Judge(knowledge, 1)) {
            // The weaker player always makes the last play that the generator gives.
            PlayExaminer examiner =
                    new PlayExaminer(settings, judge, Progress.NONE, (planes, at, legal, ties) -> legal.size() - 1);
            PlayExercise exercise =
                    (PlayExercise) examiner.question(moment, 0, Dice.ofGame(1, 1), new Promises(kind -> true))
                            .orElseThrow()
                            .exercise();
            assertTrue(exercise.ranking().size() > 5, "plays");
            for (PlayVerdict play : exercise.ranking()) {
                assertEquals(Basis.SIMULATED, play.basis());
                assertEquals(
                        RaceOutlook.of(play.play().next(), TABLES).outcomes().swapped(), play.outcomes());
            }
        }
    }
}
