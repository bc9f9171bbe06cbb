package org.pipwright.engine.network;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.text.Excerpt;

/**
 * Model files in the safetensors format: eight bytes with the length of a JSON header, the header, then the weights as
 * little-endian floats. Tensors are {@code contact.0.weight} of shape [outputs, inputs], {@code contact.0.bias}, and so
 * on, then the same for {@code race}. The header's metadata names the format version, the feature set of each network
 * and the SHA-256 of the weights; every other entry is a note about where the model comes from.
 *
 * <p>Format versions: 1, the first.
 */
public final class ModelFile {
    /** Metadata key of the weights' checksum. */
    public static final String SHA256 = "sha256";

    static final String FORMAT = "pipwright-model";
    static final String VERSION = "1";

    /** Far above any model of use, far below what could exhaust memory. */
    private static final int MOST_BYTES = 256 << 20;

    private static final int MOST_HEADER = 1 << 20;

    private static final int MOST_LAYERS = 16;

    private ModelFile() {}

    /**
     * Reads a model file and checks all of it.
     *
     * @param file the file
     * @return the model; its notes include the checksum as {@value #SHA256}
     * @throws InvalidModelException if the file is missing, damaged or not a Pipwright model; one line says which
     */
    public static Model read(Path file) {
        try {
            if (Files.isDirectory(file)) {
                throw new InvalidModelException("'" + file + "' is a folder, not a model file");
            }
            if (!Files.exists(file)) {
                throw new InvalidModelException("no model file '" + file + "': check the path");
            }
            try (InputStream in = Files.newInputStream(file)) {
                return read(in, file.toString());
            }
        } catch (AccessDeniedException e) {
            throw new InvalidModelException("no permission to read '" + file + "': change its permissions or copy it");
        } catch (IOException e) {
            throw new InvalidModelException(
                    "cannot read '" + file + "': " + Excerpt.of(String.valueOf(e.getMessage())));
        }
    }

    /**
     * Reads a model from a stream and checks all of it.
     *
     * @param in the stream, read to its end
     * @param name what to call it in messages
     * @return the model
     * @throws InvalidModelException if it is damaged or no Pipwright model
     * @throws IOException if the stream fails
     */
    public static Model read(InputStream in, String name) throws IOException {
        byte[] bytes = in.readNBytes(MOST_BYTES + 1);
        if (bytes.length > MOST_BYTES) {
            throw new InvalidModelException("'" + name + "' is too large to be a Pipwright model");
        }
        return parse(bytes, name);
    }

    private static Model parse(byte[] bytes, String name) {
        try {
            return parse(bytes);
        } catch (InvalidModelException e) {
            throw new InvalidModelException("model '" + name + "': " + e.getMessage());
        }
    }

    private static Model parse(byte[] bytes) {
        if (bytes.length < Long.BYTES) {
            throw new InvalidModelException("only " + bytes.length + " bytes, cut off: copy or train it again");
        }
        ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        long headerLength = buffer.getLong();
        if (headerLength < 2 || headerLength > MOST_HEADER || headerLength > buffer.remaining()) {
            throw new InvalidModelException("its header claims " + Long.toUnsignedString(headerLength)
                    + " bytes of a file of " + bytes.length + ": cut off, or not a Pipwright model");
        }
        ModelHeader header = ModelHeader.parse(bytes, Long.BYTES, (int) headerLength);
        Map<String, String> metadata = header.metadata();
        requireEntry(metadata, "format", FORMAT, "it is not a Pipwright model");
        requireEntry(metadata, "format_version", VERSION, "it needs another version of Pipwright");
        ByteBuffer data =
                buffer.position(Long.BYTES + (int) headerLength).slice().order(ByteOrder.LITTLE_ENDIAN);
        header.requireCovers(data.limit());
        requireEntry(metadata, SHA256, sha256(data), "its weights are damaged: copy or train it again");
        Network contact = network(header, data, "contact");
        Network race = network(header, data, "race");
        int layers = contact.layers().size() + race.layers().size();
        if (header.tensors().size() != 2 * layers) {
            throw new InvalidModelException("it holds tensors beside its layers");
        }
        return new Model(contact, race, metadata);
    }

    private static void requireEntry(Map<String, String> metadata, String key, String expected, String otherwise) {
        String found = metadata.get(key);
        if (!expected.equals(found)) {
            String shown = found == null ? "missing" : Excerpt.of(found);
            throw new InvalidModelException(
                    "its " + key + " is " + shown + " where " + expected + " is expected: " + otherwise);
        }
    }

    private static Network network(ModelHeader header, ByteBuffer data, String name) {
        String label = header.metadata().get("features." + name);
        FeatureSet features;
        try {
            features = FeatureSet.named(String.valueOf(label));
        } catch (IllegalArgumentException e) {
            throw new InvalidModelException("its " + name + " network reads the unknown feature set '"
                    + Excerpt.of(String.valueOf(label)) + "': it needs another version of Pipwright");
        }
        List<Layer> layers = new ArrayList<>();
        while (layers.size() < MOST_LAYERS && header.tensors().containsKey(name + "." + layers.size() + ".weight")) {
            layers.add(layer(header, data, name + "." + layers.size()));
        }
        return new Network(features, layers);
    }

    private static Layer layer(ModelHeader header, ByteBuffer data, String name) {
        ModelHeader.Tensor weight = header.tensor(name + ".weight", 2);
        ModelHeader.Tensor bias = header.tensor(name + ".bias", 1);
        int outputs = weight.shape().get(0);
        int inputs = weight.shape().get(1);
        float[] weights = new float[inputs * outputs];
        for (int j = 0; j < outputs; j++) {
            for (int i = 0; i < inputs; i++) {
                weights[i * outputs + j] = data.getFloat(weight.from() + Float.BYTES * (j * inputs + i));
            }
        }
        float[] biases = new float[bias.shape().get(0)];
        for (int j = 0; j < biases.length; j++) {
            biases[j] = data.getFloat(bias.from() + Float.BYTES * j);
        }
        return new Layer(inputs, outputs, weights, biases);
    }

    /**
     * Writes a model file, atomically.
     *
     * @param file the file; its folder must exist
     * @param model the model; its notes are kept
     * @throws IOException if it cannot be written; an existing file is then as before
     */
    public static void write(Path file, Model model) throws IOException {
        byte[] bytes = toBytes(model);
        AtomicFile.write(file, out -> out.write(bytes));
    }

    /**
     * The bytes of a model file.
     *
     * @param model the model
     * @return what {@link #write} writes: the same bytes for the same model
     */
    public static byte[] toBytes(Model model) {
        ByteArrayOutputStream data = new ByteArrayOutputStream();
        ModelHeader.Builder header = new ModelHeader.Builder();
        append(header, data, "contact", model.contact());
        append(header, data, "race", model.race());
        Map<String, String> metadata = new TreeMap<>(model.notes());
        metadata.put("format", FORMAT);
        metadata.put("format_version", VERSION);
        metadata.put("features.contact", model.contact().features().label());
        metadata.put("features.race", model.race().features().label());
        metadata.put(SHA256, sha256(ByteBuffer.wrap(data.toByteArray())));
        byte[] json = header.toJson(metadata);
        return ByteBuffer.allocate(Long.BYTES + json.length + data.size())
                .order(ByteOrder.LITTLE_ENDIAN)
                .putLong(json.length)
                .put(json)
                .put(data.toByteArray())
                .array();
    }

    private static void append(ModelHeader.Builder header, ByteArrayOutputStream data, String name, Network network) {
        for (int l = 0; l < network.layers().size(); l++) {
            Layer layer = network.layers().get(l);
            int from = data.size();
            data.writeBytes(outputMajor(layer));
            header.add(name + "." + l + ".weight", List.of(layer.outputs(), layer.inputs()), from, data.size());
            from = data.size();
            data.writeBytes(floats(layer.biases()));
            header.add(name + "." + l + ".bias", List.of(layer.outputs()), from, data.size());
        }
    }

    private static byte[] outputMajor(Layer layer) {
        float[] turned = new float[layer.weights().length];
        for (int i = 0; i < layer.inputs(); i++) {
            for (int j = 0; j < layer.outputs(); j++) {
                turned[j * layer.inputs() + i] = layer.weights()[i * layer.outputs() + j];
            }
        }
        return floats(turned);
    }

    private static byte[] floats(float[] numbers) {
        ByteBuffer buffer = ByteBuffer.allocate(Float.BYTES * numbers.length).order(ByteOrder.LITTLE_ENDIAN);
        buffer.asFloatBuffer().put(numbers);
        return buffer.array();
    }

    private static String sha256(ByteBuffer data) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(data.duplicate().rewind());
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
