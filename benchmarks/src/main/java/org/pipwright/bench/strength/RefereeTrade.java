package org.pipwright.bench.strength;

import java.util.function.BooleanSupplier;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;

/**
 * Judging decisions on other machines.
 *
 * @param known what plays the rollouts
 * @param header how they are rolled out
 */
record RefereeTrade(Shared<PortableKnowledge> known, ReferenceHeader header) implements Trade<Decision, Reference> {
    @Override
    public Worker<Decision, Reference> hire() {
        return new Judging(new Referee(known.get().knowledge(), header, 1));
    }

    /** Judges for one thread. */
    private record Judging(Referee referee) implements Worker<Decision, Reference> {
        @Override
        public Reference work(Decision decision, BooleanSupplier stopped) {
            return referee.judge(decision, stopped);
        }

        @Override
        public void close() {
            referee.close();
        }
    }
}
