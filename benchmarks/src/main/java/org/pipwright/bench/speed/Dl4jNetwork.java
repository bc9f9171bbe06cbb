package org.pipwright.bench.speed;

import java.util.List;
import org.deeplearning4j.nn.conf.NeuralNetConfiguration;
import org.deeplearning4j.nn.conf.layers.DenseLayer;
import org.deeplearning4j.nn.multilayer.MultiLayerNetwork;
import org.nd4j.linalg.activations.Activation;
import org.nd4j.linalg.factory.Nd4j;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;

/** Our networks as Deeplearning4j's, for inference alone: the output is the scores before the softmax. */
final class Dl4jNetwork {
    private Dl4jNetwork() {}

    static MultiLayerNetwork of(Network network) {
        NeuralNetConfiguration.ListBuilder builder = new NeuralNetConfiguration.Builder().list();
        List<Layer> layers = network.layers();
        for (int l = 0; l < layers.size(); l++) {
            builder.layer(new DenseLayer.Builder()
                    .nIn(layers.get(l).inputs())
                    .nOut(layers.get(l).outputs())
                    .activation(l < layers.size() - 1 ? Activation.RELU : Activation.IDENTITY)
                    .build());
        }
        MultiLayerNetwork theirs = new MultiLayerNetwork(builder.build());
        theirs.init();
        for (int l = 0; l < layers.size(); l++) {
            Layer layer = layers.get(l);
            theirs.setParam(l + "_W", Nd4j.create(layer.weights(), new long[] {layer.inputs(), layer.outputs()}, 'c'));
            theirs.setParam(l + "_b", Nd4j.create(layer.biases(), new long[] {1, layer.outputs()}, 'c'));
        }
        return theirs;
    }
}
