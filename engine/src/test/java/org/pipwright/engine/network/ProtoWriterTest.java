package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The wire format, with the examples of the Protocol Buffers documentation ("Encoding"; from memory) first. */
class ProtoWriterTest {
    private static String hex(ProtoWriter writer) {
        return HexFormat.of().formatHex(writer.toBytes());
    }

    @ParameterizedTest
    @CsvSource({
        "1, 150, 089601",
        "1, 0, 0800",
        "1, 127, 087f",
        "1, 128, 088001",
        "15, 1, 7801",
        "16, 1, 800101",
        "2, 300, 10ac02",
        "1, 9223372036854775807, 08ffffffffffffffff7f"
    })
    void numbers(int field, long value, String expected) {
        assertEquals(expected, hex(new ProtoWriter().number(field, value)));
    }

    @Test
    void texts() {
        assertEquals("120774657374696e67", hex(new ProtoWriter().text(2, "testing")));
        assertEquals("1202c3a9", hex(new ProtoWriter().text(2, "\u00e9")));
    }

    @Test
    void messages() {
        assertEquals("1a03089601", hex(new ProtoWriter().message(3, new ProtoWriter().number(1, 150))));
    }

    @Test
    void longBytes() {
        assertEquals("0ac801" + "00".repeat(200), hex(new ProtoWriter().bytes(1, new byte[200])));
    }
}
