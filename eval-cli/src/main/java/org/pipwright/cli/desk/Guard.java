package org.pipwright.cli.desk;

import java.util.function.IntSupplier;

/** The key that the desk prints, and the cookie with it, which browsers send for this site's own pages only. */
final class Guard {
    private final IntSupplier port;
    private final String key = Secret.key();

    /**
     * A guard with a fresh random key.
     *
     * @param port gives the port of the server, once it listens
     */
    Guard(IntSupplier port) {
        this.port = port;
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
        return cookieName() + "=" + key + Door.COOKIE;
    }

    /** Whether a text is the key. */
    boolean opens(String offered) {
        return Secret.same(offered, key);
    }
}
