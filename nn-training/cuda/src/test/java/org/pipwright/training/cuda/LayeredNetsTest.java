package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.RandomNetworks;
import org.pipwright.models.ModelCatalog;

/** The arrays that a card is given of layered networks, against engine's evaluation of the networks themselves. */
class LayeredNetsTest {
    private static final int COUNT = 300;

    private static void same(Lanes lanes) {
        int[] planes = RandomPositions.of(COUNT, 4);
        PositionEvaluator plain = new PlainLayers(lanes);
        PositionEvaluator engine = new NetworkEvaluator(lanes);
        float[] expected = new float[6 * COUNT];
        float[] chances = new float[6 * COUNT];
        for (int i = 0; i < COUNT; i++) {
            engine.evaluate(planes, 8 * i, expected, 6 * i);
            plain.evaluate(planes, 8 * i, chances, 6 * i);
        }
        assertArrayEquals(expected, chances, 1e-5f);
    }

    @Test
    void aNetThatShipsAnswersAsItDoesInEngine() {
        same((Lanes) ModelCatalog.shipped().load("fifth").net());
    }

    @ParameterizedTest
    @EnumSource(FeatureSet.class)
    void everyFeatureSetDoes(FeatureSet features) {
        same(new Lanes(RandomNetworks.of(features, 5, 24, 12, 8), RandomNetworks.of(FeatureSet.RACE_1, 6, 20)));
        same(new Lanes(RandomNetworks.of(FeatureSet.CONTACT_1, 5, 8), RandomNetworks.of(features, 6, 9, 7)));
    }

    @Test
    void theKernelHasRoomForFourLayersOfAThousandOutputs() {
        Lanes roomy = new Lanes(
                RandomNetworks.of(FeatureSet.RACE_1, 1, LayeredNets.MAX_WIDTH),
                RandomNetworks.of(FeatureSet.RACE_1, 1, 8, 8, 8));
        assertTrue(GameNets.fits(roomy));
        GameNets.requireFits(roomy);
        Lanes deep = new Lanes(roomy.contact(), RandomNetworks.of(FeatureSet.RACE_1, 1, 8, 8, 8, 8));
        Lanes wide = new Lanes(RandomNetworks.of(FeatureSet.RACE_1, 1, LayeredNets.MAX_WIDTH + 16), roomy.race());
        for (Lanes lanes : new Lanes[] {deep, wide}) {
            assertFalse(GameNets.fits(lanes));
            IllegalArgumentException e =
                    assertThrows(IllegalArgumentException.class, () -> GameNets.requireFits(lanes));
            assertTrue(e.getMessage().endsWith("not for " + lanes.shape()), e.getMessage());
        }
        assertFalse(GameNets.fits(RandomNetworks.residual(FeatureSet.PLACES_1, 1, 64, 1)));
    }
}
