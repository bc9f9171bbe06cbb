package org.pipwright.engine.network;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.zip.CRC32;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.text.Excerpt;

/**
 * Model files in the safetensors format: eight bytes with the length of a JSON header, the header, then the weights as
 * little-endian floats, of four bytes (F32) or, where that holds every weight of a network exactly, of two (F16).
 *
 * <p>Tensors of two networks that share the work are {@code contact.0.weight} of shape [outputs, inputs], {@code
 * contact.0.bias}, and so on, then the same for {@code race}. Those of a residual network are {@code deep.input}, {@code
 * deep.block0.a}, {@code deep.block0.b}, and so on for further blocks, {@code deep.output}, each with a {@code .weight} of
 * shape [inputs, outputs] and a {@code .bias}. A quick net before it is the two networks, or a residual network whose
 * tensors begin with {@code quick}.
 *
 * <p>The header's metadata names the format version, the feature set of each network ({@code features.deep} and so on) and
 * the SHA-256 of the weights; every other entry is a note about where the model comes from.
 *
 * <p>Format versions: 1, the first; 2, with residual networks and floats of two bytes, written only where it is needed.
 */
@PublicApi
public final class ModelFile {
    /** Metadata key of the weights' checksum. */
    public static final String SHA256 = "sha256";

    static final String FORMAT = "pipwright-model";
    static final String FIRST = "1";
    static final String SECOND = "2";

    /** First part of the names of a residual network that judges. */
    static final String DEEP = "deep";

    /** First part of the names of a residual network that drops plays before it. */
    static final String QUICK = "quick";

    /** Far above any model of use, far below what could exhaust memory. */
    private static final int MAX_BYTES = 256 << 20;

    /** Bytes that are read at once: a file's go through a buffer of this size, which should stay in a core's own cache. */
    private static final int PIECE = 1 << 16;

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
        return parse(bytes(in, name), name, false);
    }

    /**
     * Reads a model from a stream of which a checksum is known, such as that of an entry of a jar: if all bytes have it, the
     * SHA-256 of the weights is not worked out. That takes 95 ms for 10 MB where C2 does not compile it, a CRC-32 takes 4.
     *
     * @param in the stream, read to its end
     * @param name what to call it in messages
     * @param crc32 CRC-32 that all bytes together should have
     * @return the model
     * @throws InvalidModelException if it is damaged or no Pipwright model
     * @throws IOException if the stream fails
     */
    public static Model read(InputStream in, String name, long crc32) throws IOException {
        byte[] bytes = bytes(in, name);
        CRC32 found = new CRC32();
        found.update(bytes);
        return parse(bytes, name, found.getValue() == crc32);
    }

    private static byte[] bytes(InputStream in, String name) throws IOException {
        byte[] bytes = bytes(in);
        if (bytes.length > MAX_BYTES) {
            throw new InvalidModelException("'" + name + "' is too large to be a Pipwright model");
        }
        return bytes;
    }

    /** All bytes of a stream, or more than there may be: in one array from the first if the stream knows how many there are. */
    private static byte[] bytes(InputStream in) throws IOException {
        byte[] bytes = new byte[Math.min(Math.max(in.available(), 1 << 13), MAX_BYTES + 1)];
        int read = 0;
        for (int piece = 1; piece > 0; read += piece) {
            piece = in.readNBytes(bytes, read, Math.min(PIECE, bytes.length - read));
        }
        byte[] more = in.readNBytes(MAX_BYTES + 1 - read);
        byte[] all = read == bytes.length && more.length == 0 ? bytes : Arrays.copyOf(bytes, read + more.length);
        System.arraycopy(more, 0, all, read, more.length);
        return all;
    }

    private static Model parse(byte[] bytes, String name, boolean whole) {
        try {
            return ModelReader.read(bytes, whole);
        } catch (InvalidModelException e) {
            throw new InvalidModelException("model '" + name + "': " + e.getMessage());
        }
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
     * Whether a note tells of the file itself, so that whoever writes another need not keep it.
     *
     * @param name name of a note
     * @return true for the checksum, the format and the feature sets
     */
    public static boolean ofFile(String name) {
        return name.equals(SHA256)
                || name.equals("format")
                || name.equals("format_version")
                || name.startsWith("features.");
    }

    /**
     * The bytes of a model file.
     *
     * @param model the model
     * @return what {@link #write} writes: the same bytes for the same model
     */
    public static byte[] toBytes(Model model) {
        return ModelWriter.toBytes(model);
    }

    /** SHA-256 of all bytes of a buffer, in hexadecimal. */
    static String sha256(ByteBuffer data) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(data.duplicate().rewind());
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
