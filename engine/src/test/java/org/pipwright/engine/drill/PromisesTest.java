package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A game is left once it promises an exercise that nobody wants any more, and for good. */
class PromisesTest {
    private static final Kind HIT = new Kind(true, "blots");
    private static final Kind QUIET = new Kind(false, "blots");

    @Test
    void brokenByWhatIsNotWanted() {
        Set<Kind> enough = new HashSet<>();
        Promises promises = new Promises(kind -> !enough.contains(kind));
        assertTrue(promises.add(HIT));
        assertTrue(promises.add(QUIET));
        assertFalse(promises.broken());
        enough.add(HIT);
        assertFalse(promises.broken(), "what was promised before is looked at again where it is taken");
        assertFalse(promises.add(HIT));
        assertTrue(promises.broken());
        assertFalse(promises.add(QUIET));
        assertEquals(List.of(HIT, QUIET, HIT, QUIET), promises.kinds());
    }
}
