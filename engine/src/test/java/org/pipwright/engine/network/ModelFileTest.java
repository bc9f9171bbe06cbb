package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.features.FeatureSet;

/** What is written comes back as it was; what cannot be opened is said so. */
class ModelFileTest {
    private static final Model MODEL = new Model(
            RandomNetworks.of(FeatureSet.CONTACT_1, 7, 20, 8),
            RandomNetworks.of(FeatureSet.RACE_1, 8, 12),
            Map.of("run", "a test", "games", "12", "quotes", "\"\\\n\u00e9\u2028"));

    @TempDir
    Path folder;

    private static void requireSame(Network expected, Network found) {
        assertEquals(expected.features(), found.features());
        assertEquals(expected.shape(), found.shape());
        for (int l = 0; l < expected.layers().size(); l++) {
            assertArrayEquals(
                    expected.layers().get(l).weights(), found.layers().get(l).weights());
            assertArrayEquals(
                    expected.layers().get(l).biases(), found.layers().get(l).biases());
        }
    }

    @Test
    void roundTripIsExact() throws IOException {
        Path file = folder.resolve("model.safetensors");
        ModelFile.write(file, MODEL);
        Model back = ModelFile.read(file);
        requireSame(MODEL.contact(), back.contact());
        requireSame(MODEL.race(), back.race());
        MODEL.notes().forEach((key, text) -> assertEquals(text, back.notes().get(key)));
        assertTrue(back.notes().get(ModelFile.SHA256).matches("[0-9a-f]{64}"));
        assertArrayEquals(Files.readAllBytes(file), ModelFile.toBytes(back), "written again, the same bytes");
    }

    /** The layout that the format asks for, read here without our reader. */
    @Test
    void layoutIsThatOfTheFormat() {
        byte[] bytes = ModelFile.toBytes(MODEL);
        ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int headerLength = Math.toIntExact(buffer.getLong());
        String header = new String(bytes, 8, headerLength, StandardCharsets.UTF_8);
        assertEquals(0, (8 + headerLength) % 8, "weights are aligned");
        String shape = "\"contact.0.weight\":{\"dtype\":\"F32\",\"shape\":[20,270],\"data_offsets\":[0,21600]}";
        assertTrue(header.contains(shape), header);
        Layer first = MODEL.contact().layers().get(0);
        for (int j = 0; j < 20; j++) {
            for (int i = 0; i < 270; i++) {
                assertEquals(first.weights()[i * 20 + j], buffer.getFloat(8 + headerLength + 4 * (j * 270 + i)));
            }
        }
    }

    @Test
    void streamsAreReadToo() throws IOException {
        Model back = ModelFile.read(new ByteArrayInputStream(ModelFile.toBytes(MODEL)), "built in");
        requireSame(MODEL.contact(), back.contact());
    }

    @Test
    void failingStreamFails() {
        IOException failure = new IOException("plugged out");
        InputStream failing = new InputStream() {
            @Override
            public int read() throws IOException {
                throw failure;
            }
        };
        assertEquals(failure, assertThrows(IOException.class, () -> ModelFile.read(failing, "a stream")));
    }

    @Test
    void endlessStreamIsTooLarge() {
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                return 0;
            }

            @Override
            public int read(byte[] bytes, int at, int length) {
                return length;
            }
        };
        requireRefused("too large", () -> ModelFile.read(endless, "zeros"));
    }

    @Test
    void folderIsNoFile() {
        requireRefused("is a folder", () -> ModelFile.read(folder));
    }

    @Test
    void missingFile() {
        requireRefused("check the path", () -> ModelFile.read(folder.resolve("none")));
    }

    @Test
    void emptyFile() throws IOException {
        Path file = Files.createFile(folder.resolve("empty"));
        requireRefused("only 0 bytes", () -> ModelFile.read(file));
    }

    /** A file that exists but gives an error when read, whoever runs the test. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void unreadableFile() {
        requireRefused("cannot read", () -> ModelFile.read(Path.of("/proc/self/mem")));
    }

    @Test
    void failedWriteLeavesTheOldModel() throws IOException {
        Path file = folder.resolve("model.safetensors");
        ModelFile.write(file, MODEL);
        assertThrows(IOException.class, () -> ModelFile.write(folder.resolve("no/such/folder"), MODEL));
        assertThrows(IOException.class, () -> ModelFile.write(file.resolve("below"), MODEL));
        requireSame(MODEL.race(), ModelFile.read(file).race());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }

    private interface Reading {
        Model read() throws IOException;
    }

    private static void requireRefused(String part, Reading reading) {
        String message =
                assertThrows(InvalidModelException.class, reading::read).getMessage();
        assertTrue(message.contains(part) && message.lines().count() == 1, message);
    }
}
