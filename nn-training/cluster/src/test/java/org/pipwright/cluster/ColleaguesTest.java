package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.parallel.WorkforceException;

/** Results of unlike workers are not put together. */
class ColleaguesTest {
    private final List<String> notes = new ArrayList<>();
    private final Colleagues colleagues = new Colleagues("abc", "vectors of 8 floats", notes::add);

    private static Delivery from(String host, String build, String arithmetic) {
        return new Delivery(host, build, arithmetic, new byte[0], null, 1);
    }

    @Test
    void alikeIsWell() {
        colleagues.look(from("one", "abc", "vectors of 8 floats"));
        colleagues.look(from("two", "abc", "vectors of 8 floats"));
        assertEquals(List.of(), notes);
    }

    @Test
    void anotherBuildIsRefused() {
        colleagues.look(from("one", "abc", "vectors of 8 floats"));
        WorkforceException refused = assertThrows(
                WorkforceException.class, () -> colleagues.look(from("two", "def", "vectors of 8 floats")));
        assertEquals(
                "the worker on two has another build of Pipwright (def, this is abc): start it with the same jars",
                refused.getMessage());
    }

    @Test
    void vectorsOfAnotherWidthAreNotMixedIn() {
        colleagues.look(from("one", "abc", "vectors of 8 floats"));
        WorkforceException refused = assertThrows(
                WorkforceException.class, () -> colleagues.look(from("two", "abc", "vectors of 16 floats")));
        assertTrue(
                refused.getMessage()
                        .startsWith(
                                "the worker on two computes with vectors of 16 floats, the one on one with vectors"),
                refused.getMessage());
    }

    @Test
    void allOfAnotherKindThanThisMachineIsToldOnce() {
        colleagues.look(from("one", "abc", "plain"));
        colleagues.look(from("two", "abc", "plain"));
        assertEquals(
                List.of("the workers compute with plain, this machine with vectors of 8 floats:"
                        + " last digits may differ from this machine's own"),
                notes);
    }
}
