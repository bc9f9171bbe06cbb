package org.pipwright.engine.judge;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;

/**
 * Answering questions elsewhere as a {@link Judge} does here.
 *
 * @param known what is known
 * @param effort how hard to think about each question
 */
public record QuestionTrade(Shared<PortableKnowledge> known, Effort effort) implements Trade<Question, Verdict> {
    @Override
    public Worker<Question, Verdict> hire() {
        return new Answering(new Judge(known.get().knowledge(), 1), effort);
    }

    /** A judge and what it is asked for. */
    private record Answering(Judge judge, Effort effort) implements Worker<Question, Verdict> {
        @Override
        public Verdict work(Question question, BooleanSupplier stopped) throws CancellationException {
            return judge.ask(question, effort, Progress.until(stopped));
        }

        @Override
        public void close() {
            judge.close();
        }
    }
}
