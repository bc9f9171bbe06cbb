package org.pipwright.engine.review;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.record.GameRecord;

/** Threads of this process. */
record CrewOfReviewers(Knowledge knowledge, ReviewSettings settings, int threads) implements Reviewers {
    @Override
    public void find(
            GameRecord record, List<Integer> turns, BiConsumer<Integer, Finding> found, BooleanSupplier stopped) {
        List<Moment> moments = Moments.of(record);
        try (Crew<Reviewer> crew = new Crew<>(threads, () -> new Reviewer(knowledge, settings, stopped))) {
            crew.run(turns.size(), (reviewer, task) -> {
                if (stopped.getAsBoolean()) {
                    throw new CancellationException("the review was stopped");
                }
                Finding finding = reviewer.find(moments.get(turns.get(task)));
                synchronized (found) {
                    found.accept(turns.get(task), finding);
                }
            });
            crew.workers().forEach(Reviewer::close);
        }
    }
}
