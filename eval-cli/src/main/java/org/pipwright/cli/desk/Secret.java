package org.pipwright.cli.desk;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;

/** Random keys that cannot be guessed. */
final class Secret {
    private static final int BYTES = 24;
    private static final SecureRandom RANDOM = new SecureRandom();

    private Secret() {}

    /** A fresh key, for addresses and cookies. */
    static String key() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** So many random characters of an alphabet. */
    static String of(String alphabet, int length) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < length; i++) {
            text.append(alphabet.charAt(RANDOM.nextInt(alphabet.length())));
        }
        return text.toString();
    }

    /** Whether two texts are the same; takes as long for any offered text of a length. */
    static boolean same(String offered, String key) {
        return offered != null
                && MessageDigest.isEqual(
                        offered.getBytes(StandardCharsets.UTF_8), key.getBytes(StandardCharsets.UTF_8));
    }
}
