package org.pipwright.engine.network;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;

/**
 * Networks in the open ONNX format (IR version 7, operator set 13; for residual networks 8 and 17), for other
 * programs to run.
 *
 * <p>Inputs: {@value #FEATURES}, float [batch, inputs], a position as {@link org.pipwright.engine.features.FeatureSet}
 * encodes it; and {@value #POSSIBLE}, float [batch, 6], 1 where {@link org.pipwright.engine.rules.PossibleOutcomes} has a
 * bit and 0 elsewhere. Output: {@value #CHANCES}, float [batch, 6], in the order of {@link Outcomes}, for the side on roll;
 * an impossible outcome gets exactly 0. One file holds one network, so a model makes two.
 *
 * <p>Field numbers are those of the format's published schema, {@code onnx.proto}.
 */
public final class OnnxFile {
    /** Name of the input with the encoded positions. */
    public static final String FEATURES = "features";

    /** Name of the input that says which outcomes are possible. */
    public static final String POSSIBLE = "possible";

    /** Name of the output. */
    public static final String CHANCES = "chances";

    private static final int IR_VERSION = 7;
    private static final int OPSET = 13;

    /** The first operator set with layer normalization, and the version of the format that came with it. */
    private static final int NORMALIZING_OPSET = 17;

    private static final int NORMALIZING_IR_VERSION = 8;
    private static final int FLOAT = 1;
    private static final String BATCH = "batch";
    private static final String ONE = "one";
    private static final String BAN = "penalty";
    private static final String ONES = "ones";

    /** Taken from the score of an impossible outcome, from which softmax then makes an exact 0. */
    private static final float PENALTY = 1e9f;

    private OnnxFile() {}

    /**
     * The bytes of an ONNX file.
     *
     * @param network the network
     * @param notes texts by name for the metadata
     * @return the same bytes for the same network and notes
     */
    public static byte[] toBytes(Network network, Map<String, String> notes) {
        ProtoWriter graph = new ProtoWriter();
        addChances(graph, addLayers(graph, network.layers()), network.features());
        addTensors(graph, network.layers());
        return model(OPSET, IR_VERSION, graph, network.features(), notes);
    }

    /**
     * The bytes of an ONNX file with a residual network.
     *
     * @param network the network
     * @param notes texts by name for the metadata
     * @return the same bytes for the same network and notes
     */
    public static byte[] toBytes(ResidualNetwork network, Map<String, String> notes) {
        ProtoWriter graph = new ProtoWriter();
        addChances(graph, addBlocks(graph, network), network.features());
        addTensors(graph, network.layers());
        float[] ones = new float[network.width()];
        Arrays.fill(ones, 1);
        graph.message(5, tensor(ONES, ones, ones.length));
        return model(NORMALIZING_OPSET, NORMALIZING_IR_VERSION, graph, network.features(), notes);
    }

    private static byte[] model(
            int opset, int irVersion, ProtoWriter graph, FeatureSet features, Map<String, String> notes) {
        graph.message(11, value(FEATURES, features.inputs()))
                .message(11, value(POSSIBLE, Outcomes.COUNT))
                .message(12, value(CHANCES, Outcomes.COUNT));
        ProtoWriter model = new ProtoWriter()
                .number(1, irVersion)
                .text(2, "pipwright")
                .message(7, graph)
                .message(8, new ProtoWriter().text(1, "").number(2, opset));
        Map<String, String> metadata = new TreeMap<>(notes);
        metadata.put("features", features.label());
        metadata.put("outcomes", "win single, win gammon, win backgammon, lose single, lose gammon, lose backgammon");
        metadata.forEach(
                (key, text) -> model.message(14, new ProtoWriter().text(1, key).text(2, text)));
        return model.toBytes();
    }

    /** Softmax over scores + (possible - 1) * penalty. */
    private static void addChances(ProtoWriter graph, String scores, FeatureSet features) {
        graph.message(1, node("Sub", "banned", POSSIBLE, ONE))
                .message(1, node("Mul", "taken", "banned", BAN))
                .message(1, node("Add", "masked", scores, "taken"))
                .message(1, node("Softmax", CHANCES, "masked").message(5, integer("axis", 1)))
                .text(2, features.label());
    }

    /** A residual network as nodes, its layers numbered in the order positions go through them. */
    private static String addBlocks(ProtoWriter graph, ResidualNetwork network) {
        String state = gemm(graph, 0, FEATURES);
        for (int k = 0; k < network.blocks().size(); k++) {
            int layer = 2 * k + 1;
            String sums = gemm(graph, layer, norm(graph, k, state));
            String hidden = "hidden." + layer;
            graph.message(1, node("Relu", hidden, sums));
            String change = gemm(graph, layer + 1, hidden);
            graph.message(1, node("Add", "state." + k, state, change));
            state = "state." + k;
        }
        int blocks = network.blocks().size();
        return gemm(graph, 2 * blocks + 1, norm(graph, blocks, state));
    }

    private static String gemm(ProtoWriter graph, int layer, String from) {
        String sums = "sums." + layer;
        graph.message(1, node("Gemm", sums, from, layer + ".weight", layer + ".bias"));
        return sums;
    }

    /** The operator's own defaults are the last axis and 1e-5 added to the variance, which are ours. */
    private static String norm(ProtoWriter graph, int number, String from) {
        String normed = "norm." + number;
        graph.message(1, node("LayerNormalization", normed, from, ONES));
        return normed;
    }

    /** The layers as nodes; returns the name of the last one's result. */
    private static String addLayers(ProtoWriter graph, List<Layer> layers) {
        String from = FEATURES;
        for (int l = 0; l < layers.size(); l++) {
            String sums = gemm(graph, l, from);
            from = sums;
            if (l < layers.size() - 1) {
                from = "hidden." + l;
                graph.message(1, node("Relu", from, sums));
            }
        }
        return from;
    }

    private static void addTensors(ProtoWriter graph, List<Layer> layers) {
        for (int l = 0; l < layers.size(); l++) {
            Layer layer = layers.get(l);
            graph.message(5, tensor(l + ".weight", layer.weights(), layer.inputs(), layer.outputs()));
            graph.message(5, tensor(l + ".bias", layer.biases(), layer.outputs()));
        }
        graph.message(5, tensor(ONE, new float[] {1}, 1)).message(5, tensor(BAN, new float[] {PENALTY}, 1));
    }

    private static ProtoWriter node(String operator, String output, String... inputs) {
        ProtoWriter node = new ProtoWriter();
        for (String input : inputs) {
            node.text(1, input);
        }
        return node.text(2, output).text(3, output).text(4, operator);
    }

    private static ProtoWriter integer(String name, long value) {
        int integerType = 2;
        return new ProtoWriter().text(1, name).number(3, value).number(20, integerType);
    }

    private static ProtoWriter tensor(String name, float[] numbers, int... shape) {
        ProtoWriter tensor = new ProtoWriter();
        for (int size : shape) {
            tensor.number(1, size);
        }
        ByteBuffer raw = ByteBuffer.allocate(Float.BYTES * numbers.length).order(ByteOrder.LITTLE_ENDIAN);
        raw.asFloatBuffer().put(numbers);
        return tensor.number(2, FLOAT).text(8, name).bytes(9, raw.array());
    }

    /** An input or output of shape [batch, width]. */
    private static ProtoWriter value(String name, int width) {
        ProtoWriter shape = new ProtoWriter()
                .message(1, new ProtoWriter().text(2, BATCH))
                .message(1, new ProtoWriter().number(1, width));
        ProtoWriter type = new ProtoWriter().number(1, FLOAT).message(2, shape);
        return new ProtoWriter().text(1, name).message(2, new ProtoWriter().message(1, type));
    }
}
