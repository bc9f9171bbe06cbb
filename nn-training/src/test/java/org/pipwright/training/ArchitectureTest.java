package org.pipwright.training;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.architecture.Dependencies;
import org.pipwright.engine.architecture.PackageOrder;

/** The order of nn-training's packages, and what they use of engine beyond its public types. */
class ArchitectureTest {
    private static final PackageOrder ORDER = new PackageOrder(
            "org.pipwright.training", "settings", "selfplay", "learner", "reference", "report", "device", "run");

    /** Packages of engine whose internal types are used here. A shorter list is better; a longer one needs a reason. */
    private static final Set<String> INTERNALS = Set.of(
            "duel",
            "evaluation",
            "features",
            "files",
            "judge",
            "match",
            "network",
            "parallel",
            "play",
            "position",
            "roll",
            "rollout",
            "rules",
            "search",
            "statistics",
            "text");

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
