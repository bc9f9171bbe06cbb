package org.pipwright.cli.desk;

import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/** A judge whom all pages share that ask the same net for the same lookahead. It hears one of them at a time. */
final class SharedJudge implements AutoCloseable {
    private static final long LOOK_MILLIS = 50;

    private final Judge judge;
    private final Effort effort;
    private final Executor executor;
    private final BooleanSupplier closed;
    private final ReentrantLock turn = new ReentrantLock(true);

    /**
     * A judge to be shared.
     *
     * @param judge the judge; nobody else may ask it
     * @param effort how deeply it looks
     * @param executor who works for pages that come back for their answer
     * @param closed whether the desk has been closed
     */
    SharedJudge(Judge judge, Effort effort, Executor executor, BooleanSupplier closed) {
        this.judge = judge;
        this.effort = effort;
        this.executor = executor;
        this.closed = closed;
    }

    /** How deeply it looks. */
    Effort effort() {
        return effort;
    }

    /** Begins to think about a question. */
    Thought<Verdict> think(Question question) {
        return new Thought<>(executor, Thought.PATIENCE, unwanted -> ask(question, unwanted));
    }

    /**
     * Answers a question.
     *
     * @param unwanted asked again and again whether to give up
     * @throws CancellationException if it was given up
     */
    Verdict ask(Question question, BooleanSupplier unwanted) {
        return inTurn(unwanted, mine -> mine.ask(question, effort, stopping(unwanted)));
    }

    /**
     * Lets a caller have the judge for himself.
     *
     * @param unwanted asked while others are heard, whether to give up
     * @throws CancellationException if it was given up before
     */
    <T> T inTurn(BooleanSupplier unwanted, Function<Judge, T> work) {
        await(unwanted);
        try {
            return work.apply(judge);
        } finally {
            turn.unlock();
        }
    }

    private void await(BooleanSupplier unwanted) {
        try {
            while (!turn.tryLock(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                if (unwanted.getAsBoolean() || closed.getAsBoolean()) {
                    throw new CancellationException("nobody waits for the answer");
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("interrupted");
        }
    }

    private Progress stopping(BooleanSupplier unwanted) {
        return Progress.until(() -> unwanted.getAsBoolean() || closed.getAsBoolean());
    }

    @Override
    public void close() {
        judge.close();
    }
}
