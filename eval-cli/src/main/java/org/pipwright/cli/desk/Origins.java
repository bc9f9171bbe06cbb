package org.pipwright.cli.desk;

import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Where requests may come from. A page of any site that is open in the same browser can send requests here: so they must
 * name this server as their host, and must not come from another origin.
 *
 * @param hosts hosts that requests may name, with the port
 */
record Origins(Supplier<Set<String>> hosts) {
    /**
     * Why a request is refused.
     *
     * @param host its Host header, or null
     * @param origin its Origin header, or null
     * @param site its Sec-Fetch-Site header, or null
     * @param reads whether it only reads
     * @return a reason, or empty if it may go on
     */
    Optional<String> refusal(String host, String origin, String site, boolean reads) {
        if (host == null || !hosts.get().contains(host)) {
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
