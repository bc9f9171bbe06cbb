package org.pipwright.engine.network;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.engine.text.Excerpt;

/** The JSON header of a safetensors file: where each tensor lies, and texts by name. */
final class ModelHeader {
    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private static final String METADATA = "__metadata__";

    /** Largest size of one dimension. */
    private static final int MAX = 1 << 16;

    private final Map<String, Tensor> tensors;
    private final Map<String, String> metadata;

    /** One tensor: how its numbers are stored, its shape and its bytes from (inclusive) and to (exclusive) in the data. */
    record Tensor(NumberType type, List<Integer> shape, int from, int to) {}

    private ModelHeader(Map<String, Tensor> tensors, Map<String, String> metadata) {
        this.tensors = Collections.unmodifiableMap(tensors);
        this.metadata = Collections.unmodifiableMap(metadata);
    }

    Map<String, Tensor> tensors() {
        return tensors;
    }

    Map<String, String> metadata() {
        return metadata;
    }

    Tensor tensor(String name, int dimensions) {
        Tensor tensor = tensors.get(name);
        if (tensor == null || tensor.shape().size() != dimensions) {
            throw new InvalidModelException("tensor " + name + " with " + dimensions + " dimensions is missing");
        }
        return tensor;
    }

    /** The tensors must lie end to end, without gap or overlap, and fill the data. */
    void requireCovers(int length) {
        List<Tensor> inOrder = new ArrayList<>(tensors.values());
        inOrder.sort(Comparator.comparingInt(Tensor::from));
        int at = 0;
        for (Tensor tensor : inOrder) {
            if (tensor.from() != at) {
                throw new InvalidModelException("its tensors do not lie end to end");
            }
            at = tensor.to();
        }
        if (at != length) {
            throw new InvalidModelException("it should hold " + at + " bytes of weights but holds " + length
                    + ": cut off or added to; copy or train it again");
        }
    }

    static ModelHeader parse(byte[] bytes, int from, int length) {
        Map<String, Tensor> tensors = new TreeMap<>();
        Map<String, String> metadata = new TreeMap<>();
        try (JsonParser json = JSON.createParser(bytes, from, length)) {
            require(json.nextToken() == JsonToken.START_OBJECT);
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                String name = json.currentName();
                require(json.nextToken() == JsonToken.START_OBJECT);
                if (name.equals(METADATA)) {
                    readTexts(json, metadata);
                } else {
                    tensors.put(name, readTensor(json, name));
                }
            }
            require(json.currentToken() == JsonToken.END_OBJECT && json.nextToken() == null);
        } catch (IOException e) {
            throw new InvalidModelException("its header is not readable: it is damaged or not a Pipwright model");
        }
        return new ModelHeader(tensors, metadata);
    }

    private static void require(boolean holds) {
        if (!holds) {
            throw new InvalidModelException("its header is not that of a safetensors file");
        }
    }

    private static void readTexts(JsonParser json, Map<String, String> texts) throws IOException {
        while (json.nextToken() == JsonToken.FIELD_NAME) {
            String name = json.currentName();
            require(json.nextToken() == JsonToken.VALUE_STRING);
            texts.put(name, json.getText());
        }
    }

    private static Tensor readTensor(JsonParser json, String name) throws IOException {
        String type = null;
        List<Integer> shape = null;
        List<Integer> offsets = null;
        while (json.nextToken() == JsonToken.FIELD_NAME) {
            String key = json.currentName();
            json.nextToken();
            switch (key) {
                case "dtype":
                    type = json.getText();
                    break;
                case "shape":
                    shape = readNumbers(json);
                    break;
                case "data_offsets":
                    offsets = readNumbers(json);
                    break;
                default:
                    require(false);
            }
        }
        require(shape != null && offsets != null && offsets.size() == 2);
        NumberType numbers = numberType(name, type);
        long values = 1;
        for (int size : shape) {
            require(size >= 1 && size <= MAX && values <= Integer.MAX_VALUE / MAX);
            values *= size;
        }
        if ((long) offsets.get(1) - offsets.get(0) != numbers.bytes * values) {
            throw new InvalidModelException(
                    "tensor " + Excerpt.of(name) + " of shape " + shape + " does not fit its bytes");
        }
        return new Tensor(numbers, shape, offsets.get(0), offsets.get(1));
    }

    private static NumberType numberType(String tensor, String type) {
        for (NumberType known : NumberType.values()) {
            if (known.name().equals(type)) {
                return known;
            }
        }
        throw new InvalidModelException("tensor " + Excerpt.of(tensor) + " is of type "
                + Excerpt.of(String.valueOf(type)) + ", not F32 or F16");
    }

    private static List<Integer> readNumbers(JsonParser json) throws IOException {
        require(json.currentToken() == JsonToken.START_ARRAY);
        List<Integer> numbers = new ArrayList<>();
        while (json.nextToken() == JsonToken.VALUE_NUMBER_INT) {
            require(json.getNumberType() == JsonParser.NumberType.INT && json.getIntValue() >= 0 && numbers.size() < 8);
            numbers.add(json.getIntValue());
        }
        require(json.currentToken() == JsonToken.END_ARRAY);
        return List.copyOf(numbers);
    }

    /** Collects tensors for a file to be written. */
    static final class Builder {
        private final Map<String, Tensor> tensors = new TreeMap<>(Comparator.naturalOrder());

        void add(String name, NumberType type, List<Integer> shape, int from, int to) {
            tensors.put(name, new Tensor(type, shape, from, to));
        }

        /** The header, padded with spaces to a multiple of eight bytes so that the weights lie aligned. */
        byte[] toJson(Map<String, String> metadata) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (JsonGenerator json = JSON.createGenerator(bytes)) {
                json.writeStartObject();
                json.writeObjectFieldStart(METADATA);
                for (Map.Entry<String, String> entry : metadata.entrySet()) {
                    json.writeStringField(entry.getKey(), entry.getValue());
                }
                json.writeEndObject();
                for (Map.Entry<String, Tensor> entry : tensors.entrySet()) {
                    writeTensor(json, entry.getKey(), entry.getValue());
                }
                json.writeEndObject();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            while (bytes.size() % Long.BYTES != 0) {
                bytes.write(' ');
            }
            return bytes.toByteArray();
        }

        private static void writeTensor(JsonGenerator json, String name, Tensor tensor) throws IOException {
            json.writeObjectFieldStart(name);
            json.writeStringField("dtype", tensor.type().name());
            json.writeArrayFieldStart("shape");
            for (int size : tensor.shape()) {
                json.writeNumber(size);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("data_offsets");
            json.writeNumber(tensor.from());
            json.writeNumber(tensor.to());
            json.writeEndArray();
            json.writeEndObject();
        }
    }
}
