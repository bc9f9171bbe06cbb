package org.pipwright.engine.review;

import java.util.List;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;

/** Records cut short, where whole ones would take too long. */
final class Beginnings {
    private Beginnings() {}

    /** The first entries of the first game. */
    static GameRecord of(GameRecord record, int entries) {
        Game game = record.games().get(0);
        int size = Math.min(entries, game.entries().size());
        return new GameRecord(
                record.heading(),
                List.of(new Game(
                        game.entries().subList(0, size), size == game.entries().size() ? game.points() : 0)));
    }
}
