package org.pipwright.training.cuda;

import java.util.List;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;

/** Layered networks as flat arrays for a card: one for contact, then one for races. */
final class LayeredNets {
    /** Numbers a network's shape takes, and the most layers that leaves room for; as in the kernel. */
    private static final int SHAPE = 8;

    private static final int MAX_LAYERS = 4;

    /** Most outputs of a layer; as in the kernel. */
    static final int MAX_WIDTH = 1024;

    private LayeredNets() {}

    /** Whether a card can answer for both networks. */
    static boolean fits(Lanes lanes) {
        return fits(lanes.contact()) && fits(lanes.race());
    }

    private static boolean fits(Network network) {
        return network.layers().size() <= MAX_LAYERS
                && network.layers().stream().allMatch(layer -> layer.outputs() <= MAX_WIDTH);
    }

    /** Of each network: measures a side, inputs of pairs, where its weights begin, how many layers, outputs of each. */
    static int[] shapes(Lanes lanes) {
        int[] shapes = new int[2 * SHAPE];
        put(lanes.contact(), 0, shapes, 0);
        put(lanes.race(), lanes.contact().weights(), shapes, SHAPE);
        return shapes;
    }

    private static void put(Network network, int weightsAt, int[] shapes, int at) {
        List<Layer> layers = network.layers();
        shapes[at] = network.features().extras() / 2;
        shapes[at + 1] = network.features().pairs();
        shapes[at + 2] = weightsAt;
        shapes[at + 3] = layers.size();
        for (int k = 0; k < layers.size(); k++) {
            shapes[at + MAX_LAYERS + k] = layers.get(k).outputs();
        }
    }

    /**
     * All weights. Those of a first layer lie input by input, since most inputs are 0, those of later layers output by
     * output; each layer's biases follow.
     */
    static float[] weights(Lanes lanes) {
        float[] weights = new float[lanes.weights()];
        int at = 0;
        for (Network network : List.of(lanes.contact(), lanes.race())) {
            for (Layer layer : network.layers()) {
                put(layer, layer == network.layers().get(0), weights, at);
                at += layer.size();
            }
        }
        return weights;
    }

    private static void put(Layer layer, boolean first, float[] weights, int at) {
        for (int i = 0; i < layer.inputs(); i++) {
            for (int o = 0; o < layer.outputs(); o++) {
                int place = first ? i * layer.outputs() + o : o * layer.inputs() + i;
                weights[at + place] = layer.weights()[i * layer.outputs() + o];
            }
        }
        System.arraycopy(layer.biases(), 0, weights, at + layer.weights().length, layer.outputs());
    }
}
