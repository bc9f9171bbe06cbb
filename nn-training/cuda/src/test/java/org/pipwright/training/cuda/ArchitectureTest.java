package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.architecture.Dependencies;
import org.pipwright.engine.architecture.PackageOrder;

/** What cuda-training uses of engine beyond its public types. */
class ArchitectureTest {
    private static final PackageOrder ORDER = new PackageOrder("org.pipwright.training.cuda", "");

    /** Packages of engine whose internal types are used here. A shorter list is better; a longer one needs a reason. */
    private static final Set<String> INTERNALS = Set.of(
            "duel",
            "evaluation",
            "features",
            "files",
            "match",
            "network",
            "play",
            "position",
            "roll",
            "rules",
            "statistics");

    @Test
    void everyPackageHasItsPlace() {
        assertEquals(Set.of(), ORDER.misnamed());
    }

    @Test
    void packagesKnowOnlyThoseBeforeThem() {
        assertEquals(Set.of(), ORDER.wrongArrows());
    }

    @Test
    void thereAreNoCircles() {
        ORDER.requireNoCircles();
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
