package org.pipwright.cli.command;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.pipwright.cli.console.UserError;

/** Where devices of a class may come in: one address of this machine, never all of them. */
final class ListenAddress {
    private static final Pattern FORM = Pattern.compile("(\\d{1,3}(?:\\.\\d{1,3}){3})?(?::(\\d{1,5}))?");
    private static final int MAX_PORT = 65_535;

    private ListenAddress() {}

    /**
     * Reads an address with or without a port; what is left out is chosen: the address if the machine has but one in a
     * network, and any port that is free.
     *
     * @param text such as {@code 192.168.1.20:8080}; may be empty
     * @return the address, with port 0 for any
     */
    static InetSocketAddress parse(String text) {
        return parse(text, own());
    }

    /** The same on a machine with these addresses. */
    static InetSocketAddress parse(String text, List<InetAddress> own) {
        Matcher form = FORM.matcher(text.strip());
        if (!form.matches()) {
            throw new UserError("--listen is '" + text + "': use an address of this machine as in 192.168.1.20,"
                    + " or with a port as in 192.168.1.20:8080");
        }
        int port = form.group(2) == null ? 0 : Integer.parseInt(form.group(2));
        if (form.group(2) != null && (port < 1 || port > MAX_PORT)) {
            throw new UserError("--listen has port " + port + ": use 1 to " + MAX_PORT);
        }
        return new InetSocketAddress(form.group(1) == null ? only(own) : known(form.group(1), own), port);
    }

    private static InetAddress only(List<InetAddress> own) {
        List<InetAddress> reached =
                own.stream().filter(each -> !each.isLoopbackAddress()).toList();
        if (reached.isEmpty()) {
            throw new UserError("--listen: this machine is in no network");
        }
        if (reached.size() > 1) {
            throw new UserError("--listen: say on which address of this machine, " + names(reached));
        }
        return reached.get(0);
    }

    private static InetAddress known(String text, List<InetAddress> own) {
        return own.stream()
                .filter(each -> each.getHostAddress().equals(text))
                .findFirst()
                .orElseThrow(() -> new UserError(
                        "--listen: " + text + " is not an address of this machine: it has " + names(own)));
    }

    private static String names(List<InetAddress> addresses) {
        return addresses.stream().map(InetAddress::getHostAddress).collect(Collectors.joining(" or "));
    }

    private static List<InetAddress> own() {
        try {
            return Collections.list(NetworkInterface.getNetworkInterfaces()).stream()
                    .flatMap(NetworkInterface::inetAddresses)
                    .filter(Inet4Address.class::isInstance)
                    .collect(Collectors.toList());
        } catch (SocketException e) {
            throw new UserError("--listen: the addresses of this machine cannot be found: " + e.getMessage());
        }
    }
}
