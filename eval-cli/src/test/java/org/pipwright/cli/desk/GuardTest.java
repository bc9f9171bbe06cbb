package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Whom a desk answers. */
class GuardTest {
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
