package org.pipwright.engine.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Inputs as texts. */
public final class Seeds {
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
}
