package org.pipwright.engine.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Files read whole, but never more than some bytes of them: what has no size of its own, as a device, may have no end. */
public final class WholeFile {
    private WholeFile() {}

    /**
     * What a file has.
     *
     * @param file the file
     * @param most bytes that it may have
     * @return its bytes
     * @throws FileSystemException if it has more; its reason says so
     * @throws IOException if it cannot be read
     */
    public static byte[] bytes(Path file, int most) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(most);
            if (bytes.length == most && in.read() >= 0) {
                throw new FileSystemException(
                        file.toString(),
                        null,
                        "it has more than " + String.format(Locale.ROOT, "%,d", most) + " bytes");
            }
            return bytes;
        }
    }

    /**
     * The text of a file.
     *
     * @param file the file
     * @param most bytes that it may have
     * @return its text
     * @throws java.nio.charset.CharacterCodingException if it is not UTF-8
     * @throws FileSystemException if it has more; its reason says so
     * @throws IOException if it cannot be read
     */
    public static String text(Path file, int most) throws IOException {
        return StandardCharsets.UTF_8
                .newDecoder()
                .decode(ByteBuffer.wrap(bytes(file, most)))
                .toString();
    }
}
