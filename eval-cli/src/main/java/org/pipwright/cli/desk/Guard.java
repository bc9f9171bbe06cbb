package org.pipwright.cli.desk;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntSupplier;

/**
 * Decides which requests are answered. The desk listens on the loopback address alone, but any page that is open in the
 * same browser can send requests there: so a request must name this server as its host, must not come from another origin,
 * and must bring the key that the desk printed, in a cookie that browsers send for this site's own pages only.
 */
final class Guard {
    private static final int KEY_BYTES = 24;

    private final IntSupplier port;
    private final String key;

    /**
     * A guard with a fresh random key.
     *
     * @param port gives the port of the server, once it listens
     */
    Guard(IntSupplier port) {
        this.port = port;
        byte[] bytes = new byte[KEY_BYTES];
        new SecureRandom().nextBytes(bytes);
        key = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** The key to be sent. */
    String key() {
        return key;
    }

    /** Name of the cookie; servers on other ports of this machine share the jar. */
    String cookieName() {
        return "pipwright-" + port.getAsInt();
    }

    /** The cookie that a browser gets for the key. */
    String cookie() {
        return cookieName() + "=" + key + "; Path=/; HttpOnly; SameSite=Strict";
    }

    /** Whether a text is the key; takes as long for any text of its length. */
    boolean opens(String offered) {
        return offered != null
                && MessageDigest.isEqual(
                        offered.getBytes(StandardCharsets.UTF_8), key.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Why a request is refused, whatever key it brings.
     *
     * @param host its Host header, or null
     * @param origin its Origin header, or null
     * @param site its Sec-Fetch-Site header, or null
     * @param reads whether it only reads
     * @return a reason, or empty if it may go on
     */
    Optional<String> refusal(String host, String origin, String site, boolean reads) {
        Set<String> hosts = Set.of("127.0.0.1:" + port.getAsInt(), "localhost:" + port.getAsInt());
        if (host == null || !hosts.contains(host)) {
            return Optional.of("this is not the host that the desk listens on");
        }
        if (origin != null && !origin.equals("http://" + host)) {
            return Optional.of("another site has sent this request");
        }
        if (!reads && site != null && !site.equals("same-origin")) {
            return Optional.of("another site has sent this request");
        }
        return Optional.empty();
    }
}
