package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whom a desk answers. */
class GuardTest {
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
        assertEquals(
                let, new Guard(() -> 7000).refusal(host, origin, site, reads).isEmpty());
    }

    @Test
    void keysAreFreshAndWholeOnes() {
        Guard guard = new Guard(() -> 7000);
        assertNotEquals(guard.key(), new Guard(() -> 7000).key());
        assertTrue(guard.opens(guard.key()));
        assertFalse(guard.opens(guard.key().substring(1)));
        assertFalse(guard.opens(""));
        assertFalse(guard.opens(null));
        assertTrue(guard.key().length() >= 32);
        assertTrue(guard.cookie().endsWith("; HttpOnly; SameSite=Strict"));
    }
}
