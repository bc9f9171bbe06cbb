package org.pipwright.charts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.architecture.Dependencies;

/** What charts are built with. */
class ArchitectureTest {
    @Test
    void jarsAreThoseOfTheList() throws IOException {
        assertEquals(List.of(), Dependencies.faults());
    }
}
