package org.pipwright.training.run;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.learner.LearnerState;

/** Checkpoints on disk: a magic word with the version, the numbers in big-endian order, then the SHA-256 of all before. */
final class CheckpointFile {
    private static final long MAGIC = 0x5057_434B_5054_0001L;

    /** The same with a model file before the checksum: its length, then its bytes. */
    private static final long WITH_STALE = 0x5057_434B_5054_0002L;

    private static final int DIGEST = 32;
    private static final int MAX_BYTES = 512 << 20;
    private static final int MAX_ARRAYS = 64;

    private CheckpointFile() {}

    static void write(Path file, Checkpoint checkpoint) throws IOException {
        AtomicFile.write(file, out -> {
            MessageDigest digest = sha256();
            DataOutputStream data = new DataOutputStream(new DigestOutputStream(out, digest));
            data.writeLong(checkpoint.stale().isPresent() ? WITH_STALE : MAGIC);
            data.writeLong(checkpoint.round());
            data.writeLong(checkpoint.games());
            data.writeLong(checkpoint.samples());
            data.writeDouble(checkpoint.seconds());
            data.writeDouble(checkpoint.rateScale());
            write(data, checkpoint.contact());
            write(data, checkpoint.race());
            if (checkpoint.stale().isPresent()) {
                byte[] stale = ModelFile.toBytes(checkpoint.stale().get());
                data.writeInt(stale.length);
                data.write(stale);
            }
            data.flush();
            out.write(digest.digest());
        });
    }

    private static void write(DataOutputStream data, LearnerState state) throws IOException {
        data.writeLong(state.steps());
        data.writeInt(state.arrays().size());
        for (float[] array : state.arrays()) {
            data.writeInt(array.length);
            ByteBuffer bytes = ByteBuffer.allocate(array.length * Float.BYTES);
            bytes.asFloatBuffer().put(array);
            data.write(bytes.array());
        }
    }

    /**
     * Reads one and checks all of it.
     *
     * @throws IOException if it cannot be read or is damaged; the message says which
     */
    static Checkpoint read(Path file) throws IOException {
        if (Files.size(file) > MAX_BYTES) {
            throw new IOException("too large to be a checkpoint");
        }
        byte[] bytes = Files.readAllBytes(file);
        int length = bytes.length - DIGEST;
        if (length < Long.BYTES) {
            throw new IOException("cut off");
        }
        MessageDigest digest = sha256();
        digest.update(bytes, 0, length);
        if (!Arrays.equals(digest.digest(), Arrays.copyOfRange(bytes, length, bytes.length))) {
            throw new IOException("damaged: its checksum is wrong");
        }
        DataInputStream data = new DataInputStream(new ByteArrayInputStream(bytes, 0, length));
        long magic = data.readLong();
        if (magic != MAGIC && magic != WITH_STALE) {
            throw new IOException("not a checkpoint, or one of another version of Pipwright");
        }
        Checkpoint checkpoint = new Checkpoint(
                data.readLong(),
                data.readLong(),
                data.readLong(),
                data.readDouble(),
                data.readDouble(),
                readState(data),
                readState(data),
                magic == MAGIC ? Optional.empty() : Optional.of(readModel(data)));
        if (!plausible(checkpoint)) {
            throw new IOException("has counts, seconds or a rate out of range");
        }
        if (data.available() > 0) {
            throw new IOException("has " + data.available() + " bytes too many");
        }
        return checkpoint;
    }

    private static boolean plausible(Checkpoint checkpoint) {
        return checkpoint.round() >= 0
                && checkpoint.games() >= 0
                && checkpoint.samples() >= 0
                && checkpoint.seconds() >= 0
                && checkpoint.seconds() < Double.POSITIVE_INFINITY
                && checkpoint.rateScale() > 0
                && checkpoint.rateScale() <= 1;
    }

    private static Model readModel(DataInputStream data) throws IOException {
        int length = data.readInt();
        if (length < 0 || length > data.available()) {
            throw new IOException("claims a net of " + length + " bytes");
        }
        try {
            return ModelFile.read(new ByteArrayInputStream(data.readNBytes(length)), "in it");
        } catch (InvalidModelException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static LearnerState readState(DataInputStream data) throws IOException {
        long steps = data.readLong();
        int count = data.readInt();
        if (count < 0 || count > MAX_ARRAYS) {
            throw new IOException("claims " + count + " arrays of weights");
        }
        List<float[]> arrays = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int length = data.readInt();
            if (length < 0 || (long) length * Float.BYTES > data.available()) {
                throw new IOException("claims " + length + " weights");
            }
            float[] array = new float[length];
            ByteBuffer.wrap(data.readNBytes(length * Float.BYTES))
                    .asFloatBuffer()
                    .get(array);
            arrays.add(array);
        }
        return new LearnerState(steps, arrays);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }
}
