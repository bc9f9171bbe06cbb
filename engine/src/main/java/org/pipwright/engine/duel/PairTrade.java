package org.pipwright.engine.duel;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.parallel.Trade;

/**
 * Playing pairs elsewhere.
 *
 * @param a one side
 * @param b the other
 * @param contest what it is about
 * @param seed of the dice
 * @param luck whether to measure luck
 */
record PairTrade(PortableEntrant a, PortableEntrant b, Contest contest, long seed, boolean luck)
        implements Trade<Pairs, Tally> {
    @Override
    public Worker<Pairs, Tally> hire() {
        // When to stop early is decided by who asks: here one pair after another is played.
        return new Playing(a.entrant(), b.entrant(), new DuelSettings(contest, 1, seed, luck, Optional.empty()));
    }

    /** Plays for one thread. */
    private static final class Playing implements Worker<Pairs, Tally> {
        private final PairPlayer player;
        private BooleanSupplier stopped = () -> false;

        Playing(Entrant a, Entrant b, DuelSettings settings) {
            player = new PairPlayer(a, b, settings, () -> stopped.getAsBoolean());
        }

        @Override
        public Tally work(Pairs pairs, BooleanSupplier told) {
            stopped = told;
            return player.play(pairs.from(), pairs.to());
        }
    }
}
