package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.models.ModelCatalog;
import org.pipwright.training.report.PrintedOpening;

/** The shipped nets' first plays against printed ones. */
class OpeningTest {
    /** The first net agrees on all 21 rolls, with lookahead 0 and 1; two are left for nets to come. */
    private static final int AGREEMENTS = 19;

    static List<String> nets() {
        return ModelCatalog.shipped().names();
    }

    private static Judge judge(Model model) {
        return new Judge(Knowledge.of(model), 1);
    }

    @ParameterizedTest
    @MethodSource("nets")
    void netsFindTheUndisputedPlaysAndNearlyAllOthers(String net) {
        List<OpeningLine> lines;
        try (Judge judge = judge(ModelCatalog.shipped().load(net))) {
            lines = OpeningTable.searched(judge, 0);
        }

        String table = lines.stream()
                .map(line -> line.opening().roll() + " " + line.verdict() + " " + line.chosen())
                .collect(Collectors.joining("\n"));
        lines.stream()
                .filter(line -> line.opening().undisputed())
                .forEach(line -> assertTrue(line.opening().isBest(line.chosen()), table));
        assertTrue(OpeningLine.agreeing(lines) >= AGREEMENTS, table);
    }

    @Test
    void allRollsAreInTheTable() {
        List<Roll> rolls =
                PrintedOpening.all().stream().map(PrintedOpening::roll).collect(Collectors.toList());

        assertEquals(21, rolls.size());
        assertTrue(rolls.containsAll(Roll.all()));
        assertTrue(rolls.subList(0, 15).containsAll(Roll.opening()));
        assertEquals(
                List.of("3-1", "6-1", "4-2", "5-3", "6-5"),
                PrintedOpening.all().stream()
                        .filter(PrintedOpening::undisputed)
                        .map(opening -> opening.roll().toString())
                        .collect(Collectors.toList()));
    }

    @Test
    void rolloutsGiveErrorsAndCosts() {
        Model model = ModelCatalog.shipped().load(ModelCatalog.shipped().defaultName());
        RolloutSettings settings = RolloutSettings.DEFAULT.withTrials(36).withTruncation(1);
        try (Judge judge = judge(model);
                Rollouts rollouts = new Rollouts(Knowledge.of(model)::judgement, settings, 1)) {
            for (OpeningLine line : OpeningTable.rolledOut(judge, rollouts)) {
                assertTrue(line.error().getAsDouble() > 0);
                assertTrue(line.cost() <= 0);
                assertEquals(line.opening().isBest(line.chosen()), line.cost() == 0);
            }
        }
    }
}
