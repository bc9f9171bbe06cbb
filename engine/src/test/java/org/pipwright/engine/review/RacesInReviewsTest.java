package org.pipwright.engine.review;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.roll.Roll;

/** A review judges races as every other command does. */
class RacesInReviewsTest {
    private static final EndgameTables TABLES = EndgameTables.of(
            OneSidedTable.build(EndgameTables.HOME, 1, TableProgress.NONE),
            TwoSidedTable.build(new SideIndex(6, 2), 1, TableProgress.NONE));

    private static final Position RACE = PositionText.parse("5@8 4@7 3@6 3@10 / 5@8 4@7 3@6 3@11");

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void racesAreSimulatedIfTheSettingsSaySo(boolean simulated) {
        Roll roll = Roll.parse("5-2");
        Play made = Plays.legal(RACE, roll).get(0);
        Moment moment = new Moment(
                0,
                4,
                0,
                RACE,
                MoneyStakes.USUAL,
                CubeState.START,
                false,
                true,
                false,
                Optional.empty(),
                CubeState.START,
                Optional.of(new Entry.Turn(0, roll, made, "")),
                Optional.empty(),
                List.of());
        Knowledge knowledge = Knowledge.of(HastyEvaluator::new).with(TABLES);
        try (Reviewer reviewer = new Reviewer(knowledge, new ReviewSettings(1, 0, 1, simulated), () -> false)) {
            Finding finding = reviewer.find(moment);
            Basis basis = simulated ? Basis.SIMULATED : Basis.ESTIMATED;
            assertEquals(simulated, finding.chances().equals(chances(RACE)));
            assertEquals(basis, finding.basis());
            for (PlayVerdict option : finding.options()) {
                assertEquals(
                        simulated,
                        option.outcomes().equals(chances(option.play().next()).swapped()),
                        option.play().toString());
                assertEquals(basis, option.basis());
            }
        }
    }

    private static Outcomes chances(Position race) {
        return RaceOutlook.of(race, TABLES).outcomes();
    }
}
