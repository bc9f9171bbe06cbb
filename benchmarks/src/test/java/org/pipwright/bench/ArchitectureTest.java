package org.pipwright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.architecture.Dependencies;
import org.pipwright.engine.architecture.PackageOrder;

/** The order of benchmarks's packages, and what they use of engine beyond its public types. */
class ArchitectureTest {
    private static final PackageOrder ORDER = new PackageOrder(
            "org.pipwright.bench",
            "",
            "games",
            "search",
            "speed",
            "training",
            "signature",
            "cube",
            "calibration",
            "start",
            "cluster",
            "explain",
            "strength",
            "exact",
            "kills",
            "cli");

    /** Packages of engine whose internal types are used here. A shorter list is better; a longer one needs a reason. */
    private static final Set<String> INTERNALS = Set.of(
            "bearoff",
            "cube",
            "duel",
            "evaluation",
            "explain",
            "features",
            "files",
            "judge",
            "match",
            "matchtable",
            "measures",
            "network",
            "parallel",
            "play",
            "position",
            "reduced",
            "review",
            "roll",
            "rollout",
            "rules",
            "search",
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
