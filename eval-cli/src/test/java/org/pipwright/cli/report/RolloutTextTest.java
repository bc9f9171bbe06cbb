package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.ActionStanding;
import org.pipwright.engine.rollout.ActionStanding.Choice;
import org.pipwright.engine.rollout.ActionStanding.Clarity;
import org.pipwright.engine.rollout.ActionStanding.Kind;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;

class RolloutTextTest {
    private static final CubeValues VALUES = new CubeValues(true, false, 0.9212, 1.5068, 1, 1.5068);

    private static final Optional<RolloutLine.Cube> NO_DOUBLES = Optional.of(new RolloutLine.Cube(0, 0, 1));

    private static String text(Choice choice, double needed, double reduction) {
        Estimate take = new Estimate(VALUES.doubleTake(), 0.02);
        List<RolloutLine> lines = List.of(
                new RolloutLine(1, take, new Estimate(-0.5068, 0.02), take, reduction, List.of(), NO_DOUBLES),
                new RolloutLine(
                        0, new Estimate(0.9212, 0.01), new Estimate(-0.0788, 0.01), take, 2.5, List.of(), NO_DOUBLES));
        ActionStanding actions = new ActionStanding(VALUES, List.of(choice), needed);
        RolloutReport report = new RolloutReport(36, lines, needed, false, Optional.of(actions));
        StringWriter text = new StringWriter();
        RolloutText.write(
                new RolloutSummary(
                        Question.before(Position.start()).with(MoneyStakes.USUAL, CubeState.START),
                        new NetLabel("some", "0".repeat(64)),
                        RolloutSettings.DEFAULT,
                        0,
                        List.of(),
                        List.of("no double", "double, take"),
                        report),
                new PrintWriter(text, true));
        return text.toString();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.0788 | 0.01  | 0   | OPEN  | doubling and rolling: 0.0788 apart, 7.9 standard errors",
                "0.0150 | 0.01  | 0   | OPEN  | doubling and rolling: 0.0150 apart, 1.5 standard errors: not clear",
                "0.0788 | 0.01  | 4.1 | CLEAR | doubling and rolling: 0.0788 apart, 7.9 standard errors: clear",
                "0.0150 | 0.01  | 4.1 | OPEN  | doubling and rolling: 0.0150 apart, 1.5 standard errors: not yet clear,"
                        + " which takes 4.1 at this look",
                "0.0015 | 0.001 | 4.1 | CLOSE | doubling and rolling: 0.0015 apart, 1.5 standard errors: known to lie"
                        + " within 0.01 points of each other",
                "0.0788 | 0     | 4.1 | CLEAR | doubling and rolling: 0.0788 apart, no error: clear",
                "0      | 0     | 4.1 | CLOSE | doubling and rolling: 0.0000 apart, the same: known to lie within 0.01"
                        + " points of each other",
            })
    void howClearAChoiceIs(double apart, double error, double needed, Clarity clarity, String expected) {
        Choice choice = new Choice(Kind.DOUBLE_OR_ROLL, new Estimate(apart, error), clarity);
        String text = text(choice, needed, 3);
        assertTrue(text.contains("\n" + expected + "\n"), text);
    }

    /** A pass is right: rolling costs what lies between it and the pass, not between it and a take. */
    @Test
    void costsAreThoseOfTheRightAnswers() {
        String text = text(new Choice(Kind.DOUBLE_OR_ROLL, new Estimate(0.0788, 0.01), Clarity.OPEN), 0, 3);
        assertTrue(text.contains("\nno double         +0.9212  -0.0788       2.5x"), text);
        assertTrue(text.contains("\ndouble, take      +1.5068  -0.5068       3.0x"), text);
        assertTrue(text.contains("\ndouble, pass: +1.0000\nDouble: the opponent should pass.\n"), text);
    }

    @ParameterizedTest
    @CsvSource({"Infinity, all of it", "NaN, ''", "2, 2.0x"})
    void luckIsAFactorOrAllOrNothing(double reduction, String expected) {
        String text = text(new Choice(Kind.DOUBLE_OR_ROLL, new Estimate(0.1, 0.01), Clarity.OPEN), 0, reduction);
        String row = text.lines()
                .filter(line -> line.startsWith("double, take"))
                .findFirst()
                .orElseThrow();
        assertTrue(row.matches("double, take +\\+1.5068 +-0.5068 +" + expected + " +0.0 +0.0 +1.00"), row);
    }
}
