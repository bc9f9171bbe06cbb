package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.features.FeatureSet;

/** Layers and networks whose sizes or numbers cannot be are refused. */
class NetworkShapeTest {
    private static Layer layer(int inputs, int outputs) {
        return RandomNetworks.layer(new SplittableRandom(1), inputs, outputs);
    }

    @Test
    void shapeNamesEveryWidth() {
        assertEquals(
                "270-20-8-6", RandomNetworks.of(FeatureSet.CONTACT_1, 1, 20, 8).shape());
        assertEquals(
                "contact 270-20-8-6, race 262-12-6", RandomNetworks.model(1).shape());
    }

    @ParameterizedTest
    @CsvSource({"0, 2, 0, 2", "2, 0, 0, 0", "2, 3, 5, 3", "2, 3, 6, 2", "-1, -6, 6, 6"})
    void layerOfOtherLengths(int inputs, int outputs, int weights, int biases) {
        assertThrows(
                InvalidModelException.class, () -> new Layer(inputs, outputs, new float[weights], new float[biases]));
    }

    @ParameterizedTest
    @ValueSource(floats = {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY})
    void layerWithNumbersThatAreNotFinite(float number) {
        assertThrows(InvalidModelException.class, () -> new Layer(1, 2, new float[] {1, number}, new float[2]));
        assertThrows(InvalidModelException.class, () -> new Layer(1, 2, new float[2], new float[] {number, 1}));
    }

    @Test
    void networkOfOneLayer() {
        requireRefused("at least two", List.of(layer(270, 6)));
    }

    @Test
    void networkWithOtherInputs() {
        requireRefused("269 inputs where 270", List.of(layer(269, 8), layer(8, 6)));
    }

    @Test
    void networkWhoseLayersDoNotMeet() {
        requireRefused("9 inputs where 8", List.of(layer(270, 8), layer(9, 6)));
    }

    @Test
    void networkWithOtherOutputs() {
        requireRefused("gives 5 outputs", List.of(layer(270, 8), layer(8, 5)));
    }

    private static void requireRefused(String part, List<Layer> layers) {
        Exception e = assertThrows(InvalidModelException.class, () -> new Network(FeatureSet.CONTACT_1, layers));
        assertTrue(e.getMessage().contains(part), e.getMessage());
    }
}
