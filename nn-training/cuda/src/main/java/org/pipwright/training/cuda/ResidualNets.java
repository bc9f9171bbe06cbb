package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Net;
import org.pipwright.engine.network.ResidualNetwork;

/** Flat arrays of weights as engine's networks, and back. */
final class ResidualNets {
    private ResidualNets() {}

    /**
     * Weights as a network in half precision.
     *
     * @throws InvalidModelException if a weight is not finite or too large for that
     */
    static ResidualNetwork network(ResidualShape shape, float[] weights) {
        int width = shape.width();
        Layer input = layer(weights, 0, shape.inputBias(), ResidualShape.INPUTS, width, width);
        List<ResidualNetwork.Block> blocks = new ArrayList<>();
        for (int k = 0; k < shape.blocks(); k++) {
            blocks.add(new ResidualNetwork.Block(
                    layer(weights, shape.a(k), shape.aBias(k), width, width, width),
                    layer(weights, shape.b(k), shape.bBias(k), width, width, width)));
        }
        Layer output = layer(
                weights, shape.output(), shape.outputBias(), width, ResidualShape.OUTCOMES, ResidualShape.OUTPUTS);
        return new ResidualNetwork(FeatureSet.PLACES_1, input, blocks, output).halved();
    }

    /** A layer from a matrix that may have more columns than count. */
    private static Layer layer(float[] weights, int at, int bias, int inputs, int outputs, int columns) {
        float[] matrix = new float[inputs * outputs];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(weights, at + i * columns, matrix, i * outputs, outputs);
        }
        return new Layer(inputs, outputs, matrix, Arrays.copyOfRange(weights, bias, bias + outputs));
    }

    /** Whether the card can answer for a net. */
    static boolean fits(Net net) {
        return net instanceof ResidualNetwork network
                && network.features() == FeatureSet.PLACES_1
                && ResidualShape.isOne(network.width() + "x" + network.blocks().size());
    }

    /** The shape of a net that fits. */
    static ResidualShape shape(Net net) {
        ResidualNetwork network = (ResidualNetwork) net;
        return new ResidualShape(network.width(), network.blocks().size());
    }

    /** The weights of a net that fits. */
    static float[] weights(Net net) {
        return weights(shape(net), (ResidualNetwork) net);
    }

    /**
     * The weights of a model's net.
     *
     * @throws InvalidModelException if it is of another kind or shape
     */
    static float[] weights(ResidualShape shape, Model model) {
        if (!(model.net() instanceof ResidualNetwork network)
                || network.features() != FeatureSet.PLACES_1
                || network.width() != shape.width()
                || network.blocks().size() != shape.blocks()) {
            throw new InvalidModelException("the net is " + model.shape() + ", not residual " + shape.width() + " x "
                    + shape.blocks() + " with the feature set " + FeatureSet.PLACES_1.label());
        }
        return weights(shape, network);
    }

    private static float[] weights(ResidualShape shape, ResidualNetwork network) {
        float[] weights = new float[shape.size()];
        int width = shape.width();
        put(network.input(), weights, 0, shape.inputBias(), width);
        for (int k = 0; k < shape.blocks(); k++) {
            put(network.blocks().get(k).a(), weights, shape.a(k), shape.aBias(k), width);
            put(network.blocks().get(k).b(), weights, shape.b(k), shape.bBias(k), width);
        }
        put(network.output(), weights, shape.output(), shape.outputBias(), ResidualShape.OUTPUTS);
        return weights;
    }

    private static void put(Layer layer, float[] weights, int at, int bias, int columns) {
        for (int i = 0; i < layer.inputs(); i++) {
            System.arraycopy(layer.weights(), i * layer.outputs(), weights, at + i * columns, layer.outputs());
        }
        System.arraycopy(layer.biases(), 0, weights, bias, layer.outputs());
    }
}
