package org.pipwright.training.cuda;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.files.AtomicFile;

/** Checkpoints on disk: a magic word with the version, the numbers in big-endian order, then the SHA-256 of all before. */
final class StateFile {
    private static final long MAGIC = 0x5057_4341_5244_0001L;
    private static final int DIGEST = 32;

    /** Weights that are converted at once: the file of a large net is some hundred megabytes. */
    private static final int CHUNK = 1 << 14;

    private StateFile() {}

    static void write(Path file, RunState state) throws IOException {
        AtomicFile.write(file, out -> {
            MessageDigest digest = sha256();
            DataOutputStream data = new DataOutputStream(new DigestOutputStream(out, digest));
            data.writeLong(MAGIC);
            data.writeDouble(state.seconds());
            data.writeDouble(state.copied());
            data.writeDouble(state.began());
            data.writeLong(state.targets());
            data.writeLong(state.games());
            data.writeLong(state.seeds());
            data.writeInt(state.nets().size());
            for (NetState net : state.nets()) {
                data.writeLong(net.steps());
                data.writeInt(net.weights().length);
                write(data, net.weights());
                write(data, net.firstMoments());
                write(data, net.secondMoments());
                write(data, net.average());
            }
            data.flush();
            out.write(digest.digest());
        });
    }

    private static void write(DataOutputStream data, float[] numbers) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(CHUNK * Float.BYTES);
        for (int from = 0; from < numbers.length; from += CHUNK) {
            int count = Math.min(CHUNK, numbers.length - from);
            bytes.asFloatBuffer().put(numbers, from, count);
            data.write(bytes.array(), 0, count * Float.BYTES);
        }
    }

    /**
     * Reads one and checks all of it.
     *
     * @param shapes the networks it must hold
     * @throws IOException if it cannot be read, is damaged or of other networks; the message says which
     */
    static RunState read(Path file, List<ResidualShape> shapes) throws IOException {
        return read(file, shapes.stream().mapToInt(ResidualShape::size).toArray());
    }

    /** The same for networks of so many weights each. */
    static RunState read(Path file, int... sizes) throws IOException {
        MessageDigest digest = sha256();
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
            DataInputStream data = new DataInputStream(new DigestInputStream(in, digest));
            RunState state = read(data, sizes);
            if (!Arrays.equals(digest.digest(), in.readNBytes(DIGEST)) || in.read() >= 0) {
                throw new IOException("damaged: its checksum is wrong");
            }
            if (!plausible(state)) {
                throw new IOException("has counts or seconds out of range");
            }
            return state;
        } catch (java.io.EOFException e) {
            throw new IOException("cut off");
        }
    }

    private static boolean plausible(RunState state) {
        return isTime(state.seconds())
                && isTime(state.copied())
                && (Double.isNaN(state.began()) || isTime(state.began()))
                && state.targets() >= 0
                && state.games() >= 0
                && state.seeds() >= 0
                && state.nets().stream().allMatch(net -> net.steps() >= 0);
    }

    private static boolean isTime(double seconds) {
        return seconds >= 0 && seconds < Double.POSITIVE_INFINITY;
    }

    private static RunState read(DataInputStream data, int... sizes) throws IOException {
        if (data.readLong() != MAGIC) {
            throw new IOException("not a checkpoint of a card, or one of another version of Pipwright");
        }
        double seconds = data.readDouble();
        double copied = data.readDouble();
        double began = data.readDouble();
        long targets = data.readLong();
        long games = data.readLong();
        long seeds = data.readLong();
        if (data.readInt() != sizes.length) {
            throw new IOException("of other networks than the settings name");
        }
        List<NetState> nets = new ArrayList<>();
        for (int size : sizes) {
            long steps = data.readLong();
            if (data.readInt() != size) {
                throw new IOException("of other networks than the settings name");
            }
            nets.add(new NetState(
                    numbers(data, size), numbers(data, size), numbers(data, size), numbers(data, size), steps));
        }
        return new RunState(seconds, copied, began, targets, games, seeds, nets);
    }

    private static float[] numbers(DataInputStream data, int size) throws IOException {
        float[] numbers = new float[size];
        byte[] bytes = new byte[CHUNK * Float.BYTES];
        for (int from = 0; from < size; from += CHUNK) {
            int count = Math.min(CHUNK, size - from);
            data.readFully(bytes, 0, count * Float.BYTES);
            ByteBuffer.wrap(bytes).asFloatBuffer().get(numbers, from, count);
        }
        return numbers;
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }
}
