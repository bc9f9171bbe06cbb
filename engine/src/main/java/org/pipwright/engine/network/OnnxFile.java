package org.pipwright.engine.network;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.files.AtomicFile;

/**
 * Writes networks in the open ONNX format (IR version 7, operator set 13), for other programs to run.
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
    private static final int FLOAT = 1;
    private static final String BATCH = "batch";
    private static final String ONE = "one";
    private static final String BAN = "penalty";

    /** Taken from the score of an impossible outcome, from which softmax then makes an exact 0. */
    private static final float PENALTY = 1e9f;

    private OnnxFile() {}

    /**
     * Writes one network, atomically.
     *
     * @param file the file; its folder must exist
     * @param network the network
     * @param notes texts by name that go into the file's metadata, beside {@code features} and {@code outcomes}
     * @throws IOException if it cannot be written; an existing file is then as before
     */
    public static void write(Path file, Network network, Map<String, String> notes) throws IOException {
        byte[] bytes = toBytes(network, notes);
        AtomicFile.write(file, out -> out.write(bytes));
    }

    /**
     * The bytes of an ONNX file.
     *
     * @param network the network
     * @param notes texts by name for the metadata
     * @return what {@link #write} writes: the same bytes for the same network and notes
     */
    public static byte[] toBytes(Network network, Map<String, String> notes) {
        ProtoWriter model = new ProtoWriter()
                .number(1, IR_VERSION)
                .text(2, "pipwright")
                .message(7, graph(network))
                .message(8, new ProtoWriter().text(1, "").number(2, OPSET));
        Map<String, String> metadata = new TreeMap<>(notes);
        metadata.put("features", network.features().label());
        metadata.put("outcomes", "win single, win gammon, win backgammon, lose single, lose gammon, lose backgammon");
        metadata.forEach(
                (key, text) -> model.message(14, new ProtoWriter().text(1, key).text(2, text)));
        return model.toBytes();
    }

    private static ProtoWriter graph(Network network) {
        ProtoWriter graph = new ProtoWriter();
        String scores = addLayers(graph, network.layers());
        // scores + (possible - 1) * penalty
        graph.message(1, node("Sub", "banned", POSSIBLE, ONE))
                .message(1, node("Mul", "taken", "banned", BAN))
                .message(1, node("Add", "masked", scores, "taken"))
                .message(1, node("Softmax", CHANCES, "masked").message(5, integer("axis", 1)))
                .text(2, network.features().label());
        addTensors(graph, network.layers());
        return graph.message(11, value(FEATURES, network.features().inputs()))
                .message(11, value(POSSIBLE, Outcomes.COUNT))
                .message(12, value(CHANCES, Outcomes.COUNT));
    }

    /** The layers as nodes; returns the name of the last one's result. */
    private static String addLayers(ProtoWriter graph, List<Layer> layers) {
        String from = FEATURES;
        for (int l = 0; l < layers.size(); l++) {
            String sums = "sums." + l;
            graph.message(1, node("Gemm", sums, from, l + ".weight", l + ".bias"));
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
