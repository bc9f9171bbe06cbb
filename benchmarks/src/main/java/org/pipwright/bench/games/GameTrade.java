package org.pipwright.bench.games;

import java.io.Serializable;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;

/**
 * Playing games of self-play on other machines, by their numbers.
 *
 * @param known what plays them
 * @param lookahead rolls that it looks ahead
 * @param seed of the dice
 * @param game plays one and tells what it brought
 */
public record GameTrade<R extends Serializable, G extends SelfGames.Game<R> & Serializable>(
        Shared<PortableKnowledge> known, int lookahead, long seed, G game) implements Trade<Long, R> {
    @Override
    public Worker<Long, R> hire() {
        SelfPlayer player = new SelfPlayer(known.get().judgement(), lookahead);
        return (number, stopped) -> SelfGames.play(game, player, seed, number);
    }
}
