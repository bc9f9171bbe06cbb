package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.parallel.WorkforceException;

/** What may stand behind {@code --cluster}. */
class MasterTest {
    @ParameterizedTest
    @ValueSource(strings = {"local", "local[1]", "local[16]", "local[*]"})
    void threadsOfThisProcess(String text) {
        assertTrue(Master.parse(text).local());
        assertEquals(text, Master.parse(text).url());
    }

    @Test
    void mastersWithStandbys() {
        Master master = Master.parse("spark://one.lan:7077,10.0.0.2:7078,[::1]:7079");
        assertEquals(3, master.addresses().size());
        assertEquals("10.0.0.2", master.addresses().get(1).getHostString());
        assertEquals(7079, master.addresses().get(2).getPort());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "local[0]",
                "local[2",
                "LOCAL",
                "yarn",
                "host:7077",
                "spark://",
                "spark://host",
                "spark://host:0",
                "spark://host:65536",
                "spark://host:7077,",
                "spark://ho st:7077",
                "spark://user@host:7077",
                "local\n"
            })
    void nothingElse(String text) {
        WorkforceException refused = assertThrows(WorkforceException.class, () -> Master.parse(text));
        assertTrue(refused.getMessage().startsWith("no master can be called '"), refused.getMessage());
        assertEquals(1, refused.getMessage().lines().count());
    }

    @Test
    void aMasterThatIsThereTellsWhereItIsReachedFrom() throws IOException {
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Master master = Master.parse("spark://127.0.0.1:" + server.getLocalPort());
            assertEquals("127.0.0.1", master.requireThere().getHostAddress());
        }
    }

    @Test
    void aClosedPortIsSaid() throws IOException {
        int port;
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = server.getLocalPort();
        }
        Master master = Master.parse("spark://127.0.0.1:" + port);
        WorkforceException missing = assertThrows(WorkforceException.class, master::requireThere);
        assertEquals(
                "no master answers at 'spark://127.0.0.1:" + port
                        + "' (connection refused): start one there, or check host and port",
                missing.getMessage());
    }
}
