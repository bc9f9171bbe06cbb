package org.pipwright.engine.fuzz;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.List;

/** Inputs as texts. */
public final class Seeds {
    private static final int DIGEST = 32;

    private Seeds() {}

    /** Texts as bytes. */
    public static List<byte[]> of(String... texts) {
        return Arrays.stream(texts)
                .map(text -> text.getBytes(StandardCharsets.UTF_8))
                .toList();
    }

    /** Bytes as text; what is no UTF-8 becomes marks of replacement. */
    public static String text(byte[] data) {
        return new String(data, StandardCharsets.UTF_8);
    }

    /** Fails if what came back is not what was there before. */
    public static void requireSame(Object before, Object after) {
        if (!before.equals(after)) {
            throw new IllegalStateException("read back as " + after + ", not " + before);
        }
    }

    /** A file that ends with the SHA-256 of what comes before, with that checksum put right. */
    public static byte[] sealed(byte[] data) {
        if (data.length < DIGEST) {
            return data;
        }
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(data, 0, data.length - DIGEST);
            byte[] sealed = data.clone();
            System.arraycopy(digest.digest(), 0, sealed, data.length - DIGEST, DIGEST);
            return sealed;
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
