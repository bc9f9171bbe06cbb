package org.pipwright.engine.review;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.Judgement;

/** Games played out where a decision seems to have cost something. Serves one thread. */
final class Games implements AutoCloseable {
    private final Rollouts rollouts;
    private final RolloutListener listener;

    Games(Supplier<Judgement> judgements, ReviewSettings settings, BooleanSupplier stopped) {
        rollouts = settings.games() == 0 ? null : new Rollouts(judgements, settings.rollouts(), 1);
        listener = new RolloutListener() {
            @Override
            public boolean round(RolloutReport report) {
                if (stopped.getAsBoolean()) {
                    throw new CancellationException("the review was stopped");
                }
                return true;
            }

            @Override
            public boolean stopped() {
                return stopped.getAsBoolean();
            }
        };
    }

    boolean wanted() {
        return rollouts != null;
    }

    RolloutReport compare(Position position, Roll roll, List<Play> plays) {
        return rollouts.compare(position, roll, plays, listener);
    }

    Outcomes odds(Position position) {
        return rollouts.odds(position, listener).lines().get(0).outcomes();
    }

    @Override
    public void close() {
        if (rollouts != null) {
            rollouts.close();
        }
    }
}
