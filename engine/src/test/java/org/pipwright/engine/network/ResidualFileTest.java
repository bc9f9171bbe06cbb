package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.features.FeatureSet;

/** Files with residual networks: what is written comes back, in single and half precision; damage is said in one line. */
class ResidualFileTest {
    private static final ResidualNetwork DEEP = RandomNetworks.residual(FeatureSet.PLACES_1, 5, 32, 2);
    private static final ResidualNetwork SMALL = RandomNetworks.residual(FeatureSet.PLACES_1, 6, 32, 1);
    private static final Map<String, String> NOTES = Map.of("run", "test");

    static Stream<Model> models() {
        Model deep = new Model(DEEP, NOTES);
        Model half = new Model(DEEP.halved(), NOTES);
        return Stream.of(
                deep,
                half,
                deep.withQuick(SMALL),
                half.withQuick(SMALL.halved()),
                half.withQuick(RandomNetworks.model(1).net()));
    }

    private static Model read(byte[] bytes) {
        try {
            return ModelFile.read(new ByteArrayInputStream(bytes), "test");
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static List<Layer> layers(Net net) {
        return net instanceof ResidualNetwork residual
                ? residual.layers()
                : Stream.concat(((Lanes) net).contact().layers().stream(), ((Lanes) net).race().layers().stream())
                        .toList();
    }

    private static void requireSame(Net expected, Net found) {
        assertEquals(expected.shape(), found.shape());
        for (int l = 0; l < layers(expected).size(); l++) {
            assertArrayEquals(
                    layers(expected).get(l).weights(), layers(found).get(l).weights());
            assertArrayEquals(
                    layers(expected).get(l).biases(), layers(found).get(l).biases());
        }
    }

    @ParameterizedTest
    @MethodSource("models")
    void roundTripIsExact(Model model) {
        byte[] bytes = ModelFile.toBytes(model);
        Model back = read(bytes);
        requireSame(model.net(), back.net());
        assertEquals(model.quick().isPresent(), back.quick().isPresent());
        model.quick().ifPresent(quick -> requireSame(quick, back.quick().get()));
        assertEquals("test", back.notes().get("run"));
        assertEquals("2", back.notes().get("format_version"));
        assertEquals("places-1", back.notes().get("features.deep"));
        assertArrayEquals(bytes, ModelFile.toBytes(back), "written again, the same bytes");
    }

    /** The layout as described, read here without our reader. */
    @Test
    void layoutOfSinglePrecision() {
        ByteBuffer data = data(
                ModelFile.toBytes(new Model(DEEP, NOTES)),
                "\"deep.input.weight\":" + "{\"dtype\":\"F32\",\"shape\":[264,32],\"data_offsets\":[0," + 4 * 264 * 32
                        + "]}");
        for (int i = 0; i < 264 * 32; i++) {
            assertEquals(DEEP.input().weights()[i], data.getFloat(4 * i));
        }
        int at = 4 * (264 * 32 + 32);
        assertEquals(DEEP.blocks().get(0).a().weights()[33], data.getFloat(at + 4 * 33));
    }

    @Test
    void layoutOfHalfPrecision() {
        ResidualNetwork half = DEEP.halved();
        ByteBuffer data = data(
                ModelFile.toBytes(new Model(half, NOTES)),
                "\"deep.input.weight\":" + "{\"dtype\":\"F16\",\"shape\":[264,32],\"data_offsets\":[0," + 2 * 264 * 32
                        + "]}");
        assertEquals(2 * half.weights(), data.limit());
        for (int i = 0; i < 264 * 32; i++) {
            assertEquals(half.input().weights()[i], HalfFloats.toFloat(data.getShort(2 * i)));
        }
    }

    private static ByteBuffer data(byte[] bytes, String expected) {
        ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int headerLength = (int) buffer.getLong();
        String header = new String(bytes, 8, headerLength, StandardCharsets.UTF_8);
        assertTrue(header.contains(expected), header);
        return buffer.position(8 + headerLength).slice().order(ByteOrder.LITTLE_ENDIAN);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"features.deep\":\"places-1\"  | \"features.deep\":\"race-1\"  | not 262 by 32",
                "\"features.deep\":\"places-1\"  | \"feature.deep\":\"places-1\" | feature set 'null'",
                "[264,32]                            | [32,264]                          | 32 inputs and 264 outputs has 8448",
                "[264,32]                            | [264,33]                          | does not fit its bytes",
                "[32,6]                              | [6,32]                            | 6 inputs and 32 outputs has 192",
                "deep.input.weight                   | deep.inputs.weight                | contact network reads",
                "deep.input.bias                     | deep.inputs.bias                  | deep.input.bias with 1",
                "deep.block0.a.weight                | deep.block9.a.weight              | at least one block",
                "deep.block0.b.weight                | deep.block0.c.weight              | deep.block0.b.weight with 2",
                "deep.block1.a.weight                | deep.block2.a.weight              | tensors beside its layers",
                "deep.output.weight                  | deep.outputs.weight               | deep.output.weight with 2",
                "\"F16\"                           | \"BF16\"                        | is of type BF16, not F32 or F16"
            })
    void forgedHeaders(String part, String other, String message) {
        requireRefused(message, replacing(ModelFile.toBytes(new Model(DEEP.halved(), NOTES)), part, other));
    }

    @Test
    void quickAlone() {
        Model model = new Model(DEEP, NOTES).withQuick(SMALL);
        byte[] bytes = ModelFile.toBytes(model);
        requireRefused(
                "a quick network but none that judges", replacing(bytes, "deep.input.weight", "deep.input.wait"));
        requireRefused("unknown feature set 'null'", replacing(bytes, "features.quick", "features.slow"));
    }

    @Test
    void halfOfTheTwoNetworksBeforeADeepOne() {
        byte[] bytes = ModelFile.toBytes(
                new Model(DEEP, NOTES).withQuick(RandomNetworks.model(1).net()));
        requireRefused("at least two layers, not 0", replacing(bytes, "race.0.weight", "race.9.weight"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "quick.block0.b.weight          | quick.block0.c.weight          | quick.block0.b.weight with 2",
                "quick.output.bias              | quick.outputs.bias             | quick.output.bias with 1",
                "\"features.quick\":\"places-1\" | \"features.quick\":\"race-1\"    | its input layer is 264 by 32, not 262",
                "quick.block0.a.weight          | deep.block9.a.weight           | a residual network has at least one block"
            })
    void forgedHeadersOfAQuickNet(String part, String other, String message) {
        requireRefused(message, replacing(ModelFile.toBytes(new Model(DEEP, NOTES).withQuick(SMALL)), part, other));
    }

    @ParameterizedTest
    @MethodSource("models")
    void cutOffAnywhere(Model model) {
        byte[] bytes = ModelFile.toBytes(model);
        for (int length = 0; length < bytes.length; length += length < 3000 ? 37 : 4999) {
            requireRefused("", Arrays.copyOf(bytes, length));
        }
    }

    /** So large that the checksum is worked out while the weights are read; a stream need not say how long it is. */
    @Test
    void largeFiles() throws IOException {
        Model large = new Model(
                RandomNetworks.residual(FeatureSet.PLACES_1, 7, 320, 3).halved(), NOTES);
        byte[] bytes = ModelFile.toBytes(large);
        assertTrue(bytes.length > 1 << 20, "bytes: " + bytes.length);
        InputStream secretive = new SequenceInputStream(
                new ByteArrayInputStream(bytes, 0, 100_000),
                new ByteArrayInputStream(bytes, 100_000, bytes.length - 100_000));
        requireSame(large.net(), ModelFile.read(secretive, "test").net());
        requireSame(large.net(), read(bytes).net());
        for (int at : new int[] {bytes.length - 1, bytes.length / 2}) {
            byte[] damaged = bytes.clone();
            // The largest exponent there is: no number any more, but what is to be said is that the file is damaged.
            damaged[at] = 0x7F;
            damaged[at - 1] = 0x7F;
            requireRefused("its weights are damaged", damaged);
        }
    }

    /** A half can stand for infinity, which no weight may be. */
    @Test
    void weightsThatAreNotFinite() {
        byte[] bytes = ModelFile.toBytes(new Model(DEEP.halved(), NOTES));
        int at = 8 + (int) ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getLong();
        bytes[at] = 0;
        bytes[at + 1] = 0x7C;
        String sum = ModelFile.sha256(ByteBuffer.wrap(Arrays.copyOfRange(bytes, at, bytes.length)));
        String header = new String(bytes, 8, at - 8, StandardCharsets.UTF_8);
        String old =
                header.replaceAll(".*\"sha256\":\"([0-9a-f]{64})\".*", "$1").strip();
        requireRefused("a weight is Infinity", replacing(bytes, old, sum));
    }

    private static byte[] replacing(byte[] bytes, String part, String other) {
        int headerLength =
                (int) ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getLong();
        String old = new String(bytes, 8, headerLength, StandardCharsets.UTF_8);
        String changed = old.replace(part, other);
        assertTrue(!changed.equals(old), "the test changes nothing");
        byte[] header = changed.getBytes(StandardCharsets.UTF_8);
        int data = bytes.length - 8 - headerLength;
        return ByteBuffer.allocate(8 + header.length + data)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putLong(header.length)
                .put(header)
                .put(bytes, 8 + headerLength, data)
                .array();
    }

    private static void requireRefused(String part, byte[] bytes) {
        String message =
                assertThrows(InvalidModelException.class, () -> read(bytes)).getMessage();
        assertTrue(message.startsWith("model 'test': ") && message.length() < 300, message);
        assertTrue(message.chars().noneMatch(Character::isISOControl), message);
        assertTrue(message.contains(part), message);
    }
}
