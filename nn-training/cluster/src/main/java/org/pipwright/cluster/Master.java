package org.pipwright.cluster;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.text.Excerpt;

/**
 * Who shares machines out.
 *
 * @param url as Spark names it
 * @param addresses where it listens, one for each standby; none for threads of this process
 */
record Master(String url, List<InetSocketAddress> addresses) {
    private static final Pattern LOCAL = Pattern.compile("local(?:\\[(?:[1-9]\\d{0,3}|\\*)])?");

    private static final Pattern HOST = Pattern.compile("([A-Za-z0-9._-]+|\\[[0-9A-Fa-f:.]+]):(\\d{1,5})");

    private static final String SPARK = "spark://";

    private static final int MAX_PORT = 65_535;

    /** For all addresses together; starting Spark itself takes a few seconds more. */
    private static final int PATIENCE_MILLIS = 4_000;

    /**
     * Reads what a user writes.
     *
     * @throws WorkforceException if it is no form that is known
     */
    static Master parse(String text) {
        if (LOCAL.matcher(text).matches()) {
            return new Master(text, List.of());
        }
        List<InetSocketAddress> addresses = new ArrayList<>();
        if (text.startsWith(SPARK)) {
            for (String part : text.substring(SPARK.length()).split(",", -1)) {
                Matcher host = HOST.matcher(part);
                if (!host.matches()
                        || Integer.parseInt(host.group(2)) < 1
                        || Integer.parseInt(host.group(2)) > MAX_PORT) {
                    throw unknown(text);
                }
                addresses.add(InetSocketAddress.createUnresolved(host.group(1), Integer.parseInt(host.group(2))));
            }
            return new Master(text, List.copyOf(addresses));
        }
        throw unknown(text);
    }

    private static WorkforceException unknown(String text) {
        return new WorkforceException("no master can be called '" + Excerpt.of(text)
                + "': use spark://HOST:PORT, or local[N] for N threads of this process");
    }

    boolean local() {
        return addresses.isEmpty();
    }

    /**
     * Sees that somebody listens there: Spark itself would try for a minute.
     *
     * @return the address of this machine that it can be reached from
     * @throws WorkforceException if nobody does
     */
    InetAddress requireThere() {
        String why = "";
        for (InetSocketAddress address : addresses) {
            try (Socket socket = new Socket()) {
                InetSocketAddress resolved = new InetSocketAddress(address.getHostString(), address.getPort());
                if (resolved.isUnresolved()) {
                    throw new UnknownHostException("no such host");
                }
                socket.connect(resolved, PATIENCE_MILLIS / addresses.size());
                return socket.getLocalAddress();
            } catch (IOException e) {
                why = Optional.ofNullable(e.getMessage())
                        .orElse(e.getClass().getSimpleName())
                        .toLowerCase(Locale.ROOT);
            }
        }
        throw new WorkforceException("no master answers at '" + url + "' (" + Excerpt.of(why)
                + "): start one there, or check host and port");
    }
}
