package org.pipwright.engine.drill;

import java.util.List;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.PortableEntrant;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;

/**
 * Playing games elsewhere, by their numbers, and looking for an exercise in each; null where there is none.
 *
 * @param settings what decides which exercises are found
 * @param known what right answers are found with
 * @param weaker whose mistakes are looked for
 */
record DrillTrade(DrillSettings settings, Shared<PortableKnowledge> known, PortableEntrant weaker)
        implements Trade<Long, Found> {
    @Override
    public Worker<Long, Found> hire() {
        return new Playing(settings, known.get().knowledge(), weaker.entrant());
    }

    @Override
    public List<Class<?>> classes() {
        return List.of(getClass(), settings.telling().getClass());
    }

    /** Plays for one thread. */
    private static final class Playing implements Worker<Long, Found> {
        private final GameMoments games;
        private BooleanSupplier stopped = () -> false;

        Playing(DrillSettings settings, Knowledge knowledge, Entrant weaker) {
            games = GameMoments.of(settings, knowledge, weaker, kind -> true, () -> stopped.getAsBoolean());
        }

        @Override
        public Found work(Long game, BooleanSupplier told) {
            stopped = told;
            return games.question(game).orElse(null);
        }

        @Override
        public void close() {
            games.close();
        }
    }
}
