package org.pipwright.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicContainer.dynamicContainer;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.RandomModel;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** Every net that ships: plain positions get plain verdicts, and the card speaks of this very file. */
class ShippedModelsTest {
    /** Six floats add up to 1 only nearly. */
    private static final double ROUNDING = 1e-6;

    private final ModelCatalog catalog = ModelCatalog.shipped();

    @TestFactory
    Stream<DynamicNode> everyNet() {
        return catalog.names().stream().map(name -> {
            Model model = catalog.verify(name);
            Stream<DynamicNode> canaries =
                    Canary.ALL.stream().map(canary -> dynamicTest(canary.name(), () -> check(model, canary)));
            Stream<DynamicNode> card = Stream.of(dynamicTest("card", () -> checkCard(name, model)));
            return dynamicContainer(name, Stream.concat(canaries, card));
        });
    }

    private static void check(Model model, Canary canary) {
        Outcomes outcomes = new NetworkEvaluator(model).evaluate(PositionText.parse(canary.position()));
        double equity = outcomes.equity();
        assertTrue(
                equity >= canary.leastEquity() - ROUNDING && equity <= canary.mostEquity() + ROUNDING,
                canary.name() + ": " + equity + " " + outcomes);
    }

    private void checkCard(String name, Model model) {
        String card = catalog.card(name).orElseThrow();
        for (String fact : List.of(name, model.notes().get(ModelFile.SHA256), model.shape())) {
            assertTrue(card.contains(fact), "the card of " + name + " does not say " + fact);
        }
    }

    @Test
    void aNetShips() {
        assertFalse(catalog.names().isEmpty());
        assertEquals(catalog.names().get(0), catalog.defaultName());
    }

    /**
     * Opening plays that no source disputes: a synopsis of rollouts by Kit Woolsey, 1995 (author and year from
     * memory, title and place not noted); common practice.
     */
    @ParameterizedTest
    @CsvSource({"3-1, 8/5 6/5", "4-2, 8/4 6/4", "6-1, 13/7 8/7", "5-3, 8/3 6/3", "6-5, 24/13"})
    void theDefaultNetOpensAsEveryoneDoes(String roll, String play) {
        Model model = catalog.load(catalog.defaultName());
        PlayRanker ranker = new PlayRanker(new NetworkEvaluator(model));
        List<PlayVerdict> ranking = ranker.rank(Position.start(), Roll.parse(roll));
        assertEquals(play, ranking.get(0).play().toString());
    }

    @Test
    void canariesTellARandomNetFromARealOne() {
        Model random = RandomModel.of(3);
        long passed =
                Canary.ALL.stream().filter(canary -> passes(random, canary)).count();
        assertTrue(passed < Canary.ALL.size() / 2, passed + " canaries pass for a random net");
        assertEquals(12, Canary.ALL.size());
    }

    private static boolean passes(Model model, Canary canary) {
        try {
            check(model, canary);
            return true;
        } catch (AssertionError e) {
            return false;
        }
    }
}
