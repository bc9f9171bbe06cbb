package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.training.settings.SettingValues;

/** Lookahead in plain loops, that the card is held against, and lookahead of whole lanes. */
class PlainLookaheadTest {
    private static final ResidualShape SHAPE = new ResidualShape(128, 1);

    private final float[] weights = ResidualNets.weights(SHAPE, model());
    private final PlainNet net = new PlainNet(SHAPE, weights);
    private final int[] planes = RandomPositions.of(4, 31);

    private static Model model() {
        return new Model(ResidualNets.network(SHAPE, Weights.of(SHAPE)), Map.of());
    }

    /** With every reply kept it is engine's lookahead 1. */
    @Test
    void allRepliesGiveEnginesLookahead() {
        PlainLookahead plain = new PlainLookahead(net, net);
        org.pipwright.engine.search.Lookahead engine = new org.pipwright.engine.search.Lookahead(
                Judgement.by(new NetworkEvaluator(model())), LookaheadSettings.FULL);
        float[] expected = new float[6];
        for (int i = 0; i < 4; i++) {
            engine.evaluate(planes, 8 * i, 1, expected, 0);
            assertEquals(
                    PlainNet.equity(expected),
                    PlainNet.equity(plain.expected(planes, 8 * i, 100, Integer.MAX_VALUE)),
                    0.001);
        }
    }

    @Test
    void pruningKeepsTheBestWithinTheMargin() {
        double[] equity = {0.1, 0.5, 0.45, 0.5, 0.39, 0.42, 0.41};
        assertEquals(List.of(1, 3, 2, 5, 6), PlainLookahead.pruned(equity, 0.1, 6));
        assertEquals(List.of(1, 3), PlainLookahead.pruned(equity, 0.1, 2));
        assertEquals(List.of(1, 3), PlainLookahead.pruned(equity, 0, 6));
    }

    /** A lane's answers, by way of its buffers, are those of each position by itself. */
    @Test
    void lanesAgreeWithSinglePositions() {
        SettingValues<CardSetting> settings =
                CardPreset.parse("minutes = 1\ndeep = 128x1\nquick = 128x1\ngames = 4\nkeep.margin = 0.02\n");
        PlainAccelerator machine = new PlainAccelerator(Recipe.of(settings));
        machine.add(SHAPE, weights);
        machine.add(SHAPE, weights);
        LaneJudge lane = machine.lane();
        for (int i = 0; i < 4; i++) {
            lane.plays().rolls.putInt(4 * i, 5 * i);
        }
        lane.plays().generate(planes);
        lane.upload();
        lane.judge();
        PlainLookahead plain = new PlainLookahead(net, net);
        float[] out = new float[6];
        for (int i = 0; i < 4; i++) {
            lane.plays().expected(i, out, 0);
            double expected = PlainNet.equity(plain.expected(planes, 8 * i, 0.02, PlaysBatch.SLOTS));
            assertEquals(expected, PlainNet.equity(out), 0.001);
            assertTrue(lane.plays().kept(i) >= 1 && lane.plays().kept(i) <= PlaysBatch.SLOTS);
        }
        assertTrue(lane.kept() >= 4 * Roll.COUNT && lane.kept() < lane.plays().size());
    }

    /** Every result of every roll is there once, and rolls keep their order. */
    @Test
    void batchesHoldAllPlays() {
        PlaysBatch batch = new PlaysBatch(
                4, bytes -> ByteBuffer.allocateDirect((int) bytes).order(ByteOrder.nativeOrder()));
        batch.generate(planes);
        org.pipwright.engine.play.PlayGenerator generator = new org.pipwright.engine.play.PlayGenerator();
        int all = 0;
        for (int i = 0; i < 4; i++) {
            for (Roll roll : Roll.all()) {
                int count = generator.generate(planes, 8 * i, roll.high(), roll.low());
                int group = i * Roll.COUNT + roll.index();
                assertEquals(count, batch.counts.getInt(4 * group));
                int start = batch.starts.getInt(4 * group);
                for (int k = 0; k < 8 * count; k++) {
                    assertEquals(generator.results()[k], batch.results.getInt(4 * (8 * start + k)));
                }
                all += count;
            }
        }
        assertEquals(all, batch.size());
    }
}
