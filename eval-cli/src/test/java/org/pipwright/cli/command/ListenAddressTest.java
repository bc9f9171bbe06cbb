package org.pipwright.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.cli.console.UserError;

/** Where a class may come in. */
class ListenAddressTest {
    private static List<InetAddress> machine(String... texts) throws UnknownHostException {
        InetAddress[] addresses = new InetAddress[texts.length];
        for (int i = 0; i < texts.length; i++) {
            addresses[i] = InetAddress.getByName(texts[i]);
        }
        return List.of(addresses);
    }

    @ParameterizedTest
    @CsvSource({
        "'', 192.168.1.20, 0",
        ":8080, 192.168.1.20, 8080",
        "192.168.1.20, 192.168.1.20, 0",
        "192.168.1.20:8080, 192.168.1.20, 8080",
        "127.0.0.1:8080, 127.0.0.1, 8080"
    })
    void anAddressOfThisMachine(String text, String host, int port) throws UnknownHostException {
        InetSocketAddress address = ListenAddress.parse(text, machine("127.0.0.1", "192.168.1.20"));
        assertEquals(host, address.getAddress().getHostAddress());
        assertEquals(port, address.getPort());
    }

    @ParameterizedTest
    @CsvSource({
        "0.0.0.0, not an address of this machine: it has 127.0.0.1 or 192.168.1.20 or 10.0.0.3",
        "192.168.1.21:80, not an address of this machine",
        "'', say on which address of this machine",
        "192.168.1.20:0, use 1 to 65535",
        "192.168.1.20:70000, use 1 to 65535",
        "example.org, use an address of this machine",
        "::1, use an address of this machine",
        "192.168.1.20:, use an address of this machine"
    })
    void nothingElse(String text, String told) throws UnknownHostException {
        List<InetAddress> machine = machine("127.0.0.1", "192.168.1.20", "10.0.0.3");
        UserError error = assertThrows(UserError.class, () -> ListenAddress.parse(text, machine));
        assertTrue(error.getMessage().contains(told), error.getMessage());
    }

    @Test
    void aMachineInNoNetwork() throws UnknownHostException {
        List<InetAddress> machine = machine("127.0.0.1");
        UserError error = assertThrows(UserError.class, () -> ListenAddress.parse("", machine));
        assertEquals("--listen: this machine is in no network", error.getMessage());
    }
}
