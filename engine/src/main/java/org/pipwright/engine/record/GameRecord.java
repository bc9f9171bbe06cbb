package org.pipwright.engine.record;

import java.util.List;
import org.pipwright.engine.PublicApi;

/**
 * A record of one or more games between two players, legal throughout. {@link RecordBuilder} makes them; only the last
 * game may stop before its end.
 *
 * @param heading who, for what, where and when
 * @param games the games in order
 */
@PublicApi
public record GameRecord(Heading heading, List<Game> games) {
    /**
     * Keeps the games.
     *
     * @param heading who, for what, where and when
     * @param games the games in order
     */
    public GameRecord {
        games = List.copyOf(games);
    }

    /**
     * What a side has won.
     *
     * @param side 0 or 1
     * @return points of the games it won, not capped at the length of a match
     */
    public int points(int side) {
        return games.stream()
                .mapToInt(game -> Math.max(0, side == 0 ? game.points() : -game.points()))
                .sum();
    }
}
