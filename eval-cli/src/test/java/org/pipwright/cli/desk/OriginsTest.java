package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whence requests may come. */
class OriginsTest {
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "127.0.0.1:7000, -, -, true, true",
                "localhost:7000, -, none, true, true",
                "127.0.0.1:7000, http://127.0.0.1:7000, same-origin, false, true",
                "127.0.0.1:7000, -, -, false, true",
                "127.0.0.1:7000, -, cross-site, true, true",
                "127.0.0.1:7000, -, cross-site, false, false",
                "127.0.0.1:7000, -, same-site, false, false",
                "127.0.0.1:7000, http://localhost:7000, same-origin, false, false",
                "127.0.0.1:7000, http://127.0.0.1:7001, same-site, true, false",
                "127.0.0.1:7000, null, -, false, false",
                "127.0.0.1:7001, -, -, true, false",
                "127.0.0.1, -, -, true, false",
                "evil.example:7000, -, -, true, false",
                "-, -, -, true, false"
            })
    void hostsAndOrigins(String host, String origin, String site, boolean reads, boolean let) {
        Origins origins = new Origins(() -> Set.of("127.0.0.1:7000", "localhost:7000"));
        assertEquals(let, origins.refusal(host, origin, site, reads).isEmpty());
    }
}
