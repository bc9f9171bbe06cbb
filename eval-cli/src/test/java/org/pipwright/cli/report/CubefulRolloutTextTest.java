package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutSettings;

class CubefulRolloutTextTest {
    /** Of the values of all candidates. */
    private static final double ERROR = 0.02;

    /** Of their differences from the best. */
    private static final double BEHIND = 0.004;

    private static String text(double roll, double take, double beaver) {
        double[] means = beaver < take ? new double[] {roll, take, beaver} : new double[] {roll, take};
        List<CubefulLine> lines = new ArrayList<>();
        for (int c = 0; c < means.length; c++) {
            Estimate value = new Estimate(means[c], ERROR);
            lines.add(new CubefulLine(c, value, new Estimate(0, BEHIND), value, 1, 0, 0, 1));
        }
        lines.sort((a, b) -> Double.compare(b.value().mean(), a.value().mean()));
        CubefulRolloutReport report = new CubefulRolloutReport(36, lines, 0, false);
        StringWriter text = new StringWriter();
        CubefulRolloutText.write(
                new CubefulRolloutSummary(
                        Position.start(),
                        null,
                        CubeState.START,
                        new MoneyStakes(true, means.length > 2),
                        new NetLabel("some", "0".repeat(64)),
                        RolloutSettings.DEFAULT,
                        0,
                        List.of(),
                        List.of("no double", "double, take", "double, beaver"),
                        Optional.of(new CubeValues(true, means.length > 2, roll, take, 1, beaver)),
                        report),
                new PrintWriter(text, true));
        return text.toString();
    }

    /** Against a pass rolling alone is uncertain; otherwise both are, and less so where they were compared. */
    @ParameterizedTest
    @CsvSource({
        "0.97, 1.50, 1.50, true",
        "1.03, 1.50, 1.50, true",
        "0.95, 1.50, 1.50, false",
        "0.60, 0.607, 0.607, true",
        "0.60, 0.61, 0.61, false",
        "-0.10, -0.12, -0.12, false",
        "-0.10, 0.10, -0.15, true",
        "-0.10, 0.10, -0.16, false"
    })
    void clearWhereItIsBeyondTwoStandardErrors(double roll, double take, double beaver, boolean open) {
        String text = text(roll, take, beaver);
        assertEquals(open, text.contains("(Not clear: doubling and rolling are within two standard errors.)"), text);
    }
}
