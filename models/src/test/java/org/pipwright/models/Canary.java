package org.pipwright.models;

import java.util.List;

/**
 * A position whose verdict is not in doubt: what any net worth shipping must say, within wide limits.
 *
 * @param name what is plain about it
 * @param position text form
 * @param leastEquity least equity of the side on roll, points per game
 * @param mostEquity largest equity of the side on roll, points per game
 */
record Canary(String name, String position, double leastEquity, double mostEquity) {
    /** The limits come from the rules and common sense about the game, no source; they are far wider than any doubt. */
    static final List<Canary> ALL = List.of(
            new Canary("the start is near even", "start", -0.15, 0.35),
            new Canary("a race far ahead", "5@1 5@2 5@3 / 5@10 5@11 5@12", 0.85, 3),
            new Canary("a race far behind", "5@10 5@11 5@12 / 5@1 5@2 4@3", -3, -0.85),
            new Canary("an even race, on roll", "5@4 5@5 5@6 / 5@4 5@5 5@6", 0.1, 0.95),
            new Canary("one checker each, on roll it is off", "1@1 / 1@1", 0.9, 1),
            new Canary("two checkers left against fifteen far away", "1@1 1@2 / 15@18", 1.6, 3),
            new Canary(
                    "closed out with one more checker on the bar",
                    "2@1 2@2 2@3 2@4 2@5 2@6 3@8 / 2@bar 3@1 5@2 5@3",
                    0.8,
                    3),
            new Canary("closed out oneself", "2@bar 3@1 5@2 5@3 / 2@1 2@2 2@3 2@4 2@5 2@6 3@8", -3, -0.6),
            new Canary(
                    "a full prime in front of two checkers", "2@4 2@5 2@6 2@7 2@8 2@9 3@13 / 2@24 4@6 4@5 5@4", 0.6, 3),
            new Canary("four on the bar against a closed board", "4@bar 6@13 5@24 / 3@6 3@5 3@4 2@3 2@2 2@7", -3, -0.9),
            new Canary("one last checker against a nearly won race", "1@1 14@off / 1@1 1@2 13@off", 0.9, 1),
            new Canary("a gammon nearly lost", "15@20 / 2@1", -3, -1.6));
}
