package org.pipwright.engine.network;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;

/**
 * A residual network from a feature set to the six outcomes. A first layer makes W numbers h; each block changes them to
 * {@code h + B max(0, A norm(h) + a) + b}; the last layer makes six scores of {@code norm(h)}, and a softmax over the
 * outcomes still possible makes chances of them. {@code norm} takes away the mean of the W numbers and divides by the root
 * of their variance plus 1e-5 (Ba, Kiros and Hinton, Layer Normalization, 2016, arXiv:1607.06450), without gain or bias,
 * which the next layer has anyway. Immutable and shared by threads; each thread evaluates through its own {@link
 * ResidualEvaluation}.
 */
public final class ResidualNetwork implements Net {
    /** Widths are multiples of this, so that kernels need no tail. */
    public static final int WIDTH_STEP = 32;

    /** Added to the variance. */
    static final float EPSILON = 1e-5f;

    private final FeatureSet features;
    private final Layer input;
    private final List<Block> blocks;
    private final Layer output;
    private final FirstLayer first;

    /** Layers ready for the kernel that this JVM uses, made at first use: a net that is only looked at needs none. */
    private volatile ResidualProducts prepared;

    /**
     * One block.
     *
     * @param a the layer before max(0, x), W by W
     * @param b the layer after it, W by W
     */
    public record Block(Layer a, Layer b) {}

    /**
     * A network from its layers.
     *
     * @param features the feature set it reads
     * @param input takes {@code features.inputs()}, gives W, a multiple of {@value #WIDTH_STEP}
     * @param blocks at least one
     * @param output takes W, gives six
     * @throws InvalidModelException if the shapes do not fit together
     */
    public ResidualNetwork(FeatureSet features, Layer input, List<Block> blocks, Layer output) {
        this.features = features;
        this.input = input;
        this.blocks = List.copyOf(blocks);
        this.output = output;
        requireShapes();
        this.first = new FirstLayer(features, input);
    }

    private void requireShapes() {
        int width = input.outputs();
        if (width % WIDTH_STEP != 0) {
            throw new InvalidModelException(
                    "a residual network's width is a multiple of " + WIDTH_STEP + ", not " + width);
        }
        if (blocks.isEmpty()) {
            throw new InvalidModelException("a residual network has at least one block");
        }
        require("input", input, features.inputs(), width);
        for (Block block : blocks) {
            require("a block's first", block.a(), width, width);
            require("a block's second", block.b(), width, width);
        }
        require("output", output, width, Outcomes.COUNT);
    }

    private static void require(String which, Layer layer, int inputs, int outputs) {
        if (layer.inputs() != inputs || layer.outputs() != outputs) {
            throw new InvalidModelException("its " + which + " layer is " + layer.inputs() + " by " + layer.outputs()
                    + ", not " + inputs + " by " + outputs);
        }
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
     * The width W.
     *
     * @return a multiple of {@value #WIDTH_STEP}
     */
    public int width() {
        return input.outputs();
    }

    /**
     * The first layer.
     *
     * @return as given
     */
    public Layer input() {
        return input;
    }

    /**
     * The blocks.
     *
     * @return an unmodifiable list, in the order positions go through them
     */
    public List<Block> blocks() {
        return blocks;
    }

    /**
     * The last layer.
     *
     * @return as given
     */
    public Layer output() {
        return output;
    }

    /** Every layer, in the order positions go through them. */
    List<Layer> layers() {
        List<Layer> layers = new ArrayList<>();
        layers.add(input);
        for (Block block : blocks) {
            layers.add(block.a());
            layers.add(block.b());
        }
        layers.add(output);
        return layers;
    }

    @Override
    public ResidualNetwork halved() {
        UnaryOperator<Layer> half = HalfFloats::rounded;
        List<Block> rounded = new ArrayList<>();
        for (Block block : blocks) {
            rounded.add(new Block(half.apply(block.a()), half.apply(block.b())));
        }
        return new ResidualNetwork(features, half.apply(input), rounded, half.apply(output));
    }

    @Override
    public String shape() {
        return "residual " + width() + " x " + blocks.size();
    }

    @Override
    public int weights() {
        return layers().stream().mapToInt(Layer::size).sum();
    }

    FirstLayer first() {
        return first;
    }

    /** Every layer but the first, prepared for a kernel. */
    ResidualProducts products(Kernel kernel) {
        if (kernel != Kernel.chosen()) {
            return ResidualProducts.of(this, kernel);
        }
        if (prepared == null) {
            synchronized (first) {
                prepared = prepared == null ? ResidualProducts.of(this, kernel) : prepared;
            }
        }
        return prepared;
    }
}
