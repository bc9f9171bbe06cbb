package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.RandomBoards;
import org.pipwright.engine.roll.Roll;

/** Which network is asked, and from whose side the answer is, against the same thing done one position at a time. */
class NetworkEvaluatorTest {
    private static final Model MODEL = RandomNetworks.model(3);

    private final NetworkEvaluator evaluator = new NetworkEvaluator(MODEL);
    private int finished;
    private int races;
    private int contacts;

    /** The chances of the mover after a play, found the slow way. */
    private float[] expected(NaiveBoard result) {
        float[] chances = new float[Outcomes.COUNT];
        if (NaiveRules.allOff(result)) {
            chances[NaiveRules.pointsLost(result.swapped()) - 1] = 1;
            finished++;
            return chances;
        }
        boolean contact = NaiveRules.contact(result);
        contacts += contact ? 1 : 0;
        races += contact ? 0 : 1;
        float[] ofOther = new float[Outcomes.COUNT];
        new NetworkEvaluation(contact ? MODEL.contact() : MODEL.race())
                .evaluate(result.swapped().toPlanes(), 0, ofOther, 0);
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[k] = ofOther[(k + 3) % Outcomes.COUNT];
        }
        return chances;
    }

    @Test
    void resultsOfRolls() {
        PlayGenerator generator = new PlayGenerator();
        RandomBoards.of(61, 1200).forEach(board -> {
            Roll roll = Roll.all().get(Math.floorMod(board.hashCode(), Roll.COUNT));
            int count = generator.generate(board.toPlanes(), 0, roll.high(), roll.low());
            float[] out = new float[count * Outcomes.COUNT];
            evaluator.evaluateResults(board.toPlanes(), 0, generator.results(), count, out);
            for (int i = 0; i < count; i++) {
                NaiveBoard result = NaiveBoard.ofPlanes(generator.results(), i * Planes.STRIDE);
                float[] found = Arrays.copyOfRange(out, i * Outcomes.COUNT, (i + 1) * Outcomes.COUNT);
                assertArrayEquals(expected(result), found, 3e-6f, result::toString);
            }
        });
        assertTrue(finished > 20 && races > 1000 && contacts > 1000, finished + " " + races + " " + contacts);
    }

    /** More results at once than the lanes start with room for, then few again. */
    @Test
    void manyResults() {
        Position wide = PositionText.parse(
                "1@24 1@23 1@22 1@21 1@20 1@19 1@18 1@17 1@16 1@15 1@14 1@13 1@12 1@11 1@10" + " / 15@24");
        PlayGenerator generator = new PlayGenerator();
        int count = generator.generate(wide.toPlanes(), 0, 1, 1);
        assertTrue(count > 256, count + " results");
        float[] out = new float[count * Outcomes.COUNT];
        evaluator.evaluateResults(wide.toPlanes(), 0, generator.results(), count, out);
        for (int i = 0; i < count; i++) {
            NaiveBoard result = NaiveBoard.ofPlanes(generator.results(), i * Planes.STRIDE);
            float[] found = Arrays.copyOfRange(out, i * Outcomes.COUNT, (i + 1) * Outcomes.COUNT);
            assertArrayEquals(expected(result), found, 3e-6f);
        }
    }

    /** The way every evaluator has by default gives what the faster one gives. */
    @Test
    void agreesWithTheDefaultMethod() {
        PositionEvaluator slow = evaluator::evaluate;
        PlayGenerator generator = new PlayGenerator();
        RandomBoards.of(62, 300).forEach(board -> {
            int count = generator.generate(board.toPlanes(), 0, 3, 2);
            float[] fast = new float[count * Outcomes.COUNT];
            float[] bySlow = new float[count * Outcomes.COUNT];
            evaluator.evaluateResults(board.toPlanes(), 0, generator.results(), count, fast);
            slow.evaluateResults(board.toPlanes(), 0, generator.results(), count, bySlow);
            assertArrayEquals(bySlow, fast, 3e-6f);
        });
    }

    /** One network for all positions: whole rolls, finished games among them, as one position at a time. */
    @Test
    void oneNetworkForAll() {
        Model deep = new Model(RandomNetworks.residual(FeatureSet.PLACES_1, 5, 32, 2), Map.of());
        PositionEvaluator fast = new NetworkEvaluator(deep);
        PositionEvaluator slow = new NetworkEvaluator(deep)::evaluate;
        PlayGenerator generator = new PlayGenerator();
        RandomBoards.of(63, 400).forEach(board -> {
            int count = generator.generate(board.toPlanes(), 0, 6, 6);
            float[] atOnce = new float[count * Outcomes.COUNT];
            float[] oneByOne = new float[count * Outcomes.COUNT];
            fast.evaluateResults(board.toPlanes(), 0, generator.results(), count, atOnce);
            slow.evaluateResults(board.toPlanes(), 0, generator.results(), count, oneByOne);
            assertArrayEquals(oneByOne, atOnce, 5e-6f);
        });
    }

    @ParameterizedTest
    @CsvSource({
        "15@off / 14@off 1@1, 1",
        "15@off / 15@6, 2",
        "15@off / 14@1 1@19, 3",
        "14@off 1@1 / 15@off, -1",
        "15@7 / 15@off, -2",
        "14@1 1@bar / 15@off, -3"
    })
    void finishedPositionsAreCertain(String text, double points) {
        assertEquals(points, evaluator.evaluate(PositionText.parse(text)).equity());
    }

    @Test
    void unfinishedPositionsSumToOne() {
        double win = evaluator.evaluate(Position.start()).win();
        assertTrue(win > 0 && win < 1);
    }
}
