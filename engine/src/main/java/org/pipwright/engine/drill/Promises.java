package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * The kinds of exercises that a game has promised so far, look after look. Once one of them is no longer wanted, the game is
 * left, since nothing of it will be taken: what a sheet has enough of it never wants again. So it does not matter when a
 * game is looked at, nor where. Serves one thread.
 */
final class Promises {
    private final Predicate<Kind> wanted;
    private final List<Kind> kinds = new ArrayList<>();
    private boolean broken;

    Promises(Predicate<Kind> wanted) {
        this.wanted = wanted;
    }

    /** Adds a kind; whether it is wanted. */
    boolean add(Kind kind) {
        kinds.add(kind);
        broken |= !wanted.test(kind);
        return !broken;
    }

    /** Whether nothing of the game will be taken. */
    boolean broken() {
        return broken;
    }

    /** Those added, in order. */
    List<Kind> kinds() {
        return List.copyOf(kinds);
    }
}
