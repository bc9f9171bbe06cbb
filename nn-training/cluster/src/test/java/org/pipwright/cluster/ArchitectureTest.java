package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.architecture.Dependencies;
import org.pipwright.engine.architecture.PackageOrder;

/** What the cluster uses of engine beyond its public types. */
class ArchitectureTest {
    private static final PackageOrder ORDER = new PackageOrder("org.pipwright.cluster", "");

    /** Packages of engine whose internal types are used here. A shorter list is better; a longer one needs a reason. */
    private static final Set<String> INTERNALS = Set.of("judge", "network", "parallel", "text");

    @Test
    void everyPackageHasItsPlace() {
        assertEquals(Set.of(), ORDER.misnamed());
    }

    @Test
    void ofEngineOnlyTheseInternalsAreUsed() {
        assertEquals(new TreeSet<>(INTERNALS), ORDER.internalsUsed());
    }

    @Test
    void jarsAreThoseOfTheList() throws IOException {
        assertEquals(List.of(), Dependencies.faults());
    }
}
