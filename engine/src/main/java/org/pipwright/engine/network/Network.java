package org.pipwright.engine.network;

import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;

/**
 * A feed-forward network from a feature set to the six outcomes: fully connected layers with max(0, x) between them, a
 * softmax over the outcomes still possible at the end. Immutable and shared by threads; each thread evaluates through its
 * own {@link NetworkEvaluation}.
 */
public final class Network {
    /** Hidden sums are padded with zeros to a multiple of this, so that kernels need no tail. */
    static final int LANES = 16;

    private final FeatureSet features;
    private final List<Layer> layers;
    private final FirstLayer first;
    private final PackedLayer[] later;

    /**
     * A network from its layers.
     *
     * @param features the feature set it reads
     * @param layers at least two; the first takes {@code features.inputs()}, the last gives six
     * @throws InvalidModelException if the shapes do not fit together
     */
    public Network(FeatureSet features, List<Layer> layers) {
        this.features = features;
        this.layers = List.copyOf(layers);
        requireShapes();
        this.first = new FirstLayer(features, layers.get(0));
        this.later = layers.stream().skip(1).map(PackedLayer::new).toArray(PackedLayer[]::new);
    }

    private void requireShapes() {
        if (layers.size() < 2) {
            throw new InvalidModelException("a network has at least two layers, not " + layers.size());
        }
        int width = features.inputs();
        for (Layer layer : layers) {
            if (layer.inputs() != width) {
                throw new InvalidModelException("a layer takes " + layer.inputs() + " inputs where " + width
                        + " come in (feature set " + features.label() + ")");
            }
            width = layer.outputs();
        }
        if (width != Outcomes.COUNT) {
            throw new InvalidModelException("the last layer gives " + width + " outputs, not " + Outcomes.COUNT);
        }
    }

    static int padded(int length) {
        return (length + LANES - 1) / LANES * LANES;
    }

    /**
     * The feature set the network reads.
     *
     * @return its feature set
     */
    public FeatureSet features() {
        return features;
    }

    /**
     * The layers as given.
     *
     * @return an unmodifiable list
     */
    public List<Layer> layers() {
        return layers;
    }

    /**
     * How many numbers training has set.
     *
     * @return weights and biases
     */
    public int weights() {
        return layers.stream().mapToInt(Layer::size).sum();
    }

    /**
     * Sizes from input to output.
     *
     * @return for instance {@code 270-256-32-6}
     */
    public String shape() {
        StringBuilder shape = new StringBuilder().append(features.inputs());
        layers.forEach(layer -> shape.append('-').append(layer.outputs()));
        return shape.toString();
    }

    /** The network with every number rounded to half precision. */
    Network halved() {
        return new Network(features, layers.stream().map(HalfFloats::rounded).toList());
    }

    FirstLayer first() {
        return first;
    }

    PackedLayer[] later() {
        return later;
    }
}
