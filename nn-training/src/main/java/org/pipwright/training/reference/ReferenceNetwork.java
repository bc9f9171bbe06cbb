package org.pipwright.training.reference;

import java.util.ArrayList;
import java.util.List;
import org.deeplearning4j.nn.conf.NeuralNetConfiguration;
import org.deeplearning4j.nn.conf.layers.DenseLayer;
import org.deeplearning4j.nn.conf.layers.OutputLayer;
import org.deeplearning4j.nn.multilayer.MultiLayerNetwork;
import org.deeplearning4j.nn.weights.WeightInit;
import org.nd4j.linalg.activations.Activation;
import org.nd4j.linalg.api.buffer.DataType;
import org.nd4j.linalg.api.ndarray.INDArray;
import org.nd4j.linalg.factory.Nd4j;
import org.nd4j.linalg.learning.config.Adam;
import org.nd4j.linalg.schedule.ISchedule;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;

/**
 * Networks as Deeplearning4j holds them, and back. Its output is the six scores before the softmax, because its input
 * does not say which outcomes are possible.
 */
public final class ReferenceNetwork {
    private ReferenceNetwork() {}

    /**
     * Builds the same network in Deeplearning4j, ready for inference or training.
     *
     * @param network our network
     * @return theirs, with the same weights
     */
    public static MultiLayerNetwork of(Network network) {
        return of(network, new SettableRate());
    }

    static MultiLayerNetwork of(Network network, ISchedule rate) {
        NeuralNetConfiguration.ListBuilder builder = new NeuralNetConfiguration.Builder()
                .dataType(DataType.FLOAT)
                .weightInit(WeightInit.ZERO)
                .updater(Adam.builder()
                        .learningRateSchedule(rate)
                        .beta1(org.pipwright.training.learner.Adam.BETA1)
                        .beta2(org.pipwright.training.learner.Adam.BETA2)
                        .epsilon(org.pipwright.training.learner.Adam.EPSILON)
                        .build())
                .list();
        List<Layer> layers = network.layers();
        for (int l = 0; l + 1 < layers.size(); l++) {
            Layer layer = layers.get(l);
            builder.layer(new DenseLayer.Builder()
                    .nIn(layer.inputs())
                    .nOut(layer.outputs())
                    .activation(Activation.RELU)
                    .build());
        }
        Layer last = layers.get(layers.size() - 1);
        builder.layer(new OutputLayer.Builder(new MaskedCrossEntropy())
                .nIn(last.inputs())
                .nOut(last.outputs())
                .activation(Activation.IDENTITY)
                .build());
        MultiLayerNetwork theirs = new MultiLayerNetwork(builder.build());
        theirs.init();
        for (int l = 0; l < layers.size(); l++) {
            Layer layer = layers.get(l);
            theirs.setParam(l + "_W", Nd4j.create(layer.weights(), new long[] {layer.inputs(), layer.outputs()}, 'c'));
            theirs.setParam(l + "_b", Nd4j.create(layer.biases(), new long[] {1, layer.outputs()}, 'c'));
        }
        return theirs;
    }

    static Network back(MultiLayerNetwork theirs, FeatureSet features) {
        List<Layer> layers = new ArrayList<>();
        for (int l = 0; l < theirs.getnLayers(); l++) {
            INDArray weights = theirs.getParam(l + "_W");
            layers.add(new Layer(
                    (int) weights.size(0),
                    (int) weights.size(1),
                    weights.dup('c').data().asFloat(),
                    theirs.getParam(l + "_b").dup('c').data().asFloat()));
        }
        return new Network(features, layers);
    }
}
