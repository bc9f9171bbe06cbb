package org.pipwright.engine.network;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.ResidualNetwork.Block;
import org.pipwright.engine.text.Excerpt;

/** Bytes of a model file to the model, every rule of {@link ModelFile} checked. */
final class ModelReader {
    private static final int MAX_HEADER = 1 << 20;

    private static final int MAX_LAYERS = 16;

    private static final int MAX_BLOCKS = 64;

    private final ModelHeader header;
    private final ByteBuffer data;
    private int tensorsUsed;

    private ModelReader(ModelHeader header, ByteBuffer data) {
        this.header = header;
        this.data = data;
    }

    static Model read(byte[] bytes) {
        return read(bytes, false);
    }

    /** The same, of bytes that may be known to be as they were written: then the weights have their checksum. */
    static Model read(byte[] bytes, boolean whole) {
        if (bytes.length < Long.BYTES) {
            throw new InvalidModelException("only " + bytes.length + " bytes, cut off: copy or train it again");
        }
        ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        long headerLength = buffer.getLong();
        if (headerLength < 2 || headerLength > MAX_HEADER || headerLength > buffer.remaining()) {
            throw new InvalidModelException("its header claims " + Long.toUnsignedString(headerLength)
                    + " bytes of a file of " + bytes.length + ": cut off, or not a Pipwright model");
        }
        ModelHeader header = ModelHeader.parse(bytes, Long.BYTES, (int) headerLength);
        Map<String, String> metadata = header.metadata();
        requireEntry(metadata, "format", "it is not a Pipwright model", ModelFile.FORMAT);
        requireEntry(
                metadata, "format_version", "it needs another version of Pipwright", ModelFile.FIRST, ModelFile.SECOND);
        ByteBuffer data =
                buffer.position(Long.BYTES + (int) headerLength).slice().order(ByteOrder.LITTLE_ENDIAN);
        header.requireCovers(data.limit());
        if (whole) {
            return new ModelReader(header, data).model();
        }
        Checksum checksum = new Checksum(data);
        try {
            Model model = new ModelReader(header, data).model();
            requireUndamaged(metadata, checksum);
            return model;
        } catch (InvalidModelException e) {
            // If the weights are damaged, that is what is to be said, not what came of it.
            requireUndamaged(metadata, checksum);
            throw e;
        }
    }

    private static void requireUndamaged(Map<String, String> metadata, Checksum checksum) {
        requireEntry(metadata, ModelFile.SHA256, "its weights are damaged: copy or train it again", checksum.get());
    }

    private static void requireEntry(Map<String, String> metadata, String key, String otherwise, String... expected) {
        String found = metadata.get(key);
        if (!List.of(expected).contains(String.valueOf(found))) {
            String shown = found == null ? "missing" : Excerpt.of(found);
            throw new InvalidModelException("its " + key + " is " + shown + " where " + String.join(" or ", expected)
                    + " is expected: " + otherwise);
        }
    }

    private Model model() {
        Optional<Net> deep = residual(ModelFile.DEEP);
        Optional<Net> quick = residual(ModelFile.QUICK);
        if (quick.isPresent() && deep.isEmpty()) {
            throw new InvalidModelException("it has a quick network but none that judges what the quick one leaves");
        }
        if (quick.isEmpty() && (deep.isEmpty() || has("contact.0") || has("race.0"))) {
            quick = Optional.of(new Lanes(network("contact"), network("race")));
        }
        if (header.tensors().size() != tensorsUsed) {
            throw new InvalidModelException("it holds tensors beside its layers");
        }
        if (deep.isEmpty()) {
            return new Model(quick.get(), header.metadata());
        }
        Model model = new Model(deep.get(), header.metadata());
        return quick.map(model::withQuick).orElse(model);
    }

    private boolean has(String layer) {
        return header.tensors().containsKey(layer + ".weight");
    }

    private FeatureSet features(String name) {
        String label = header.metadata().get("features." + name);
        try {
            return FeatureSet.named(String.valueOf(label));
        } catch (IllegalArgumentException e) {
            throw new InvalidModelException("its " + name + " network reads the unknown feature set '"
                    + Excerpt.of(String.valueOf(label)) + "': it needs another version of Pipwright");
        }
    }

    private Network network(String name) {
        FeatureSet features = features(name);
        List<Layer> layers = new ArrayList<>();
        while (layers.size() < MAX_LAYERS && has(name + "." + layers.size())) {
            layers.add(layer(name + "." + layers.size(), true));
        }
        return new Network(features, layers);
    }

    private Optional<Net> residual(String name) {
        if (!has(name + ".input")) {
            return Optional.empty();
        }
        FeatureSet features = features(name);
        Layer input = layer(name + ".input", false);
        List<Block> blocks = new ArrayList<>();
        while (blocks.size() < MAX_BLOCKS && has(name + ".block" + blocks.size() + ".a")) {
            String block = name + ".block" + blocks.size();
            blocks.add(new Block(layer(block + ".a", false), layer(block + ".b", false)));
        }
        return Optional.of(new ResidualNetwork(features, input, blocks, layer(name + ".output", false)));
    }

    private Layer layer(String name, boolean outputMajor) {
        ModelHeader.Tensor weight = header.tensor(name + ".weight", 2);
        ModelHeader.Tensor bias = header.tensor(name + ".bias", 1);
        tensorsUsed += 2;
        int rows = weight.shape().get(0);
        int columns = weight.shape().get(1);
        float[] weights = numbers(weight);
        return outputMajor
                ? new Layer(columns, rows, Matrices.turned(weights, rows, columns), numbers(bias))
                : new Layer(rows, columns, weights, numbers(bias));
    }

    private float[] numbers(ModelHeader.Tensor tensor) {
        int count = (tensor.to() - tensor.from()) / tensor.type().bytes;
        if (tensor.type() == NumberType.F32) {
            float[] numbers = new float[count];
            data.duplicate()
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .position(tensor.from())
                    .asFloatBuffer()
                    .get(numbers);
            return numbers;
        }
        return HalfFloats.toFloats(data.array(), data.arrayOffset() + tensor.from(), count);
    }
}
