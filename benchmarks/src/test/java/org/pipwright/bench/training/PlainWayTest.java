package org.pipwright.bench.training;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.models.ModelCatalog;

class PlainWayTest {
    private final Model model = ModelCatalog.shipped().load("fifth");

    /** The peer computes the same chances, or the comparison would mean nothing; and it learns. */
    @Test
    void valuesAsOursAndLearns() {
        int[] start = Position.start().toPlanes();
        PlayGenerator generator = new PlayGenerator();
        int count = generator.generate(start, 0, 4, 3);
        float[] ours = new float[count * Outcomes.COUNT];
        new NetworkEvaluator(model).evaluateResults(start, 0, generator.results(), count, ours);
        try (PlainWay plain = new PlainWay(model.contact())) {
            assertArrayEquals(ours, plain.chances(generator.results(), count), 1e-5f);
            int moves = plain.play(Dice.ofGame(1, 0));
            assertEquals(moves, plain.play(Dice.ofGame(1, 0)), 200, "two games of usual length");
            assertNotEquals(ours[0], plain.chances(generator.results(), count)[0]);
        }
    }
}
