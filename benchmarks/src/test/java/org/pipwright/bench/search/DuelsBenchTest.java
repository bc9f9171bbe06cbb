package org.pipwright.bench.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;

/** What is timed is what it says. */
class DuelsBenchTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");

    @Test
    void gamesAreCounted() {
        assertEquals(8, DuelsCommand.games(MODEL, Contest.Cubeless.FULL_GAMES, 4, 1, 2));
        assertEquals(8, DuelsCommand.games(MODEL, new Contest.Money(MoneyStakes.USUAL), 4, 1, 2));
        long games = DuelsCommand.games(MODEL, new Contest.Match(2, ShippedMatchTable.load()), 4, 1, 2);
        // Eight matches to 2 have one to three games each.
        assertTrue(games >= 8 && games <= 24, "games " + games);
    }
}
