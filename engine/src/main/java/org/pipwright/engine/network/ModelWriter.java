package org.pipwright.engine.network;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.engine.network.ResidualNetwork.Block;

/** A model to the bytes of its file, by the rules of {@link ModelFile}. */
final class ModelWriter {
    private final ModelHeader.Builder header = new ModelHeader.Builder();
    private final ByteArrayOutputStream data = new ByteArrayOutputStream();
    private final Map<String, String> metadata = new TreeMap<>();
    private boolean needsSecond;

    private ModelWriter() {}

    static byte[] toBytes(Model model) {
        return new ModelWriter().write(model);
    }

    private byte[] write(Model model) {
        metadata.putAll(model.notes());
        model.quick().ifPresent(quick -> add(ModelFile.QUICK, quick));
        add(ModelFile.DEEP, model.net());
        metadata.put("format", ModelFile.FORMAT);
        metadata.put("format_version", needsSecond ? ModelFile.SECOND : ModelFile.FIRST);
        metadata.put(ModelFile.SHA256, ModelFile.sha256(ByteBuffer.wrap(data.toByteArray())));
        byte[] json = header.toJson(metadata);
        return ByteBuffer.allocate(Long.BYTES + json.length + data.size())
                .order(ByteOrder.LITTLE_ENDIAN)
                .putLong(json.length)
                .put(json)
                .put(data.toByteArray())
                .array();
    }

    private void add(String name, Net net) {
        if (net instanceof Lanes lanes) {
            addNetwork("contact", lanes.contact());
            addNetwork("race", lanes.race());
        } else {
            addResidual(name, (ResidualNetwork) net);
        }
    }

    private void addNetwork(String name, Network network) {
        metadata.put("features." + name, network.features().label());
        NumberType type = type(network.layers());
        for (int l = 0; l < network.layers().size(); l++) {
            Layer layer = network.layers().get(l);
            float[] turned = Matrices.turned(layer.weights(), layer.inputs(), layer.outputs());
            add(name + "." + l, turned, List.of(layer.outputs(), layer.inputs()), layer.biases(), type);
        }
    }

    private void addResidual(String name, ResidualNetwork network) {
        needsSecond = true;
        metadata.put("features." + name, network.features().label());
        NumberType type = type(network.layers());
        add(name + ".input", network.input(), type);
        for (int k = 0; k < network.blocks().size(); k++) {
            Block block = network.blocks().get(k);
            add(name + ".block" + k + ".a", block.a(), type);
            add(name + ".block" + k + ".b", block.b(), type);
        }
        add(name + ".output", network.output(), type);
    }

    private void add(String name, Layer layer, NumberType type) {
        add(name, layer.weights(), List.of(layer.inputs(), layer.outputs()), layer.biases(), type);
    }

    private void add(String name, float[] weights, List<Integer> shape, float[] biases, NumberType type) {
        add(name + ".weight", weights, shape, type);
        add(name + ".bias", biases, List.of(biases.length), type);
    }

    private void add(String name, float[] numbers, List<Integer> shape, NumberType type) {
        int from = data.size();
        data.writeBytes(bytes(numbers, type));
        header.add(name, type, shape, from, data.size());
    }

    private NumberType type(List<Layer> layers) {
        boolean half = layers.stream().allMatch(HalfFloats::hold);
        needsSecond |= half;
        return half ? NumberType.F16 : NumberType.F32;
    }

    private static byte[] bytes(float[] numbers, NumberType type) {
        ByteBuffer buffer = ByteBuffer.allocate(type.bytes * numbers.length).order(ByteOrder.LITTLE_ENDIAN);
        if (type == NumberType.F32) {
            buffer.asFloatBuffer().put(numbers);
            return buffer.array();
        }
        for (float number : numbers) {
            buffer.putShort(HalfFloats.ofFloat(number));
        }
        return buffer.array();
    }
}
