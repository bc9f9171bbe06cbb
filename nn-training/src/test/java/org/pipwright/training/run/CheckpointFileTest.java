package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.learner.InitialLayers;

/** There and back; and whatever is damaged is refused. */
class CheckpointFileTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("checkpoint");
    }

    private byte[] written() throws IOException {
        CheckpointFile.write(file(), Checkpoints.small(3));
        return Files.readAllBytes(file());
    }

    private String refused(byte[] bytes) throws IOException {
        Files.write(file(), bytes);
        String message = assertThrows(IOException.class, () -> CheckpointFile.read(file()))
                .getMessage();
        assertFalse(message.isEmpty() || message.contains("\n"), message);
        return message;
    }

    @Test
    void thereAndBack() throws IOException {
        written();
        Checkpoint back = CheckpointFile.read(file());
        Checkpoints.assertSame(Checkpoints.small(3), back);
        assertEquals(4.5, back.seconds());
    }

    private static Checkpoint withStale() {
        Checkpoint small = Checkpoints.small(3);
        Model stale = new Model(
                InitialLayers.network(FeatureSet.CONTACT_1, List.of(3), 1),
                InitialLayers.network(FeatureSet.RACE_1, List.of(2), 2),
                Map.of());
        return new Checkpoint(
                small.round(),
                small.games(),
                small.samples(),
                small.seconds(),
                small.rateScale(),
                small.contact(),
                small.race(),
                Optional.of(stale));
    }

    @Test
    void aStaleNetGoesAlong() throws IOException {
        CheckpointFile.write(file(), withStale());
        Checkpoint back = CheckpointFile.read(file());
        Checkpoints.assertSame(Checkpoints.small(3), back);
        assertArrayEquals(
                ModelFile.toBytes(withStale().stale().orElseThrow()),
                ModelFile.toBytes(back.stale().orElseThrow()));
        assertEquals(Optional.empty(), Checkpoints.small(3).stale());
    }

    @Test
    void aForgedStaleNetIsRefused() throws IOException, GeneralSecurityException {
        int at = written().length - 32;
        CheckpointFile.write(file(), withStale());
        byte[] bytes = Files.readAllBytes(file());
        ByteBuffer.wrap(bytes).putInt(at, bytes.length);
        seal(bytes);
        assertEquals("claims a net of " + bytes.length + " bytes", refused(bytes));
        ByteBuffer.wrap(bytes).putInt(at, 3);
        seal(bytes);
        refused(bytes);
    }

    private static void seal(byte[] bytes) throws GeneralSecurityException {
        int length = bytes.length - 32;
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        digest.update(bytes, 0, length);
        System.arraycopy(digest.digest(), 0, bytes, length, 32);
    }

    @Test
    void everyTruncationIsRefused() throws IOException {
        byte[] bytes = written();
        for (int length = 0; length < bytes.length; length++) {
            refused(Arrays.copyOf(bytes, length));
        }
        refused(Arrays.copyOf(bytes, bytes.length + 1));
    }

    @Test
    void everyFlippedByteIsRefused() throws IOException {
        byte[] bytes = written();
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < bytes.length; i++) {
            byte[] damaged = bytes.clone();
            damaged[i] ^= (byte) (1 << random.nextInt(8));
            assertEquals("damaged: its checksum is wrong", refused(damaged));
        }
    }

    /** Wrong numbers under a right checksum. Six numbers and the steps lie before the count of arrays. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 | 7 | not a checkpoint, or one of another version of Pipwright",
                "56 | -1 | claims -1 arrays of weights",
                "56 | 65 | claims 65 arrays of weights",
                "60 | -1 | claims -1 weights",
                "60 | 2147483647 | claims 2147483647 weights"
            })
    void forgedNumbers(int at, int number, String message) throws IOException, GeneralSecurityException {
        byte[] bytes = written();
        ByteBuffer.wrap(bytes).putInt(at, number);
        seal(bytes);
        assertEquals(message, refused(bytes));
    }

    @Test
    void missing() {
        assertThrows(IOException.class, () -> CheckpointFile.read(folder.resolve("none")));
        assertThrows(IOException.class, () -> CheckpointFile.read(folder));
    }
}
