package org.pipwright.engine.judge;

import java.util.concurrent.CancellationException;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;

/** What the answers of one judge share: its knowledge, its threads, a search, and whether it has been told to stop. */
final class Thinking implements AutoCloseable {
    private final Knowledge knowledge;
    private final int threads;
    private final Races races;
    private ParallelLookahead lookahead;
    private volatile Progress progress = Progress.NONE;

    Thinking(Knowledge knowledge, int threads) {
        this.knowledge = knowledge;
        this.threads = threads;
        races = new Races(knowledge, threads);
    }

    Knowledge knowledge() {
        return knowledge;
    }

    int threads() {
        return threads;
    }

    Races races() {
        return races;
    }

    /** Whom to ask from now on whether to stop. */
    void follow(Progress other) {
        progress = other;
    }

    boolean stopped() {
        return progress.stopped();
    }

    /** Fails if it has been told to stop: what was found by then is no answer. */
    void goOn() {
        if (stopped()) {
            throw new CancellationException("the judge was stopped");
        }
    }

    /** What one thread judges with, until it is told to stop. */
    Judgement judgement() {
        Judgement patient = knowledge.judgement();
        return new Judgement(new StoppableEvaluator(patient.evaluator(), this::stopped), patient.horizon());
    }

    /** Lookahead with and without a cube; its memory is that of all judges who know the same. */
    ParallelLookahead lookahead() {
        lookahead = lookahead == null
                ? new ParallelLookahead(
                        this::judgement,
                        knowledge::terms,
                        LookaheadSettings.DEFAULT,
                        threads,
                        knowledge.memory(),
                        this::stopped)
                : lookahead;
        return lookahead;
    }

    /** What is known of a race before the roll. */
    RaceOutlook race(Question question) {
        return races.outlook(question.position());
    }

    /** Whether the position asked about is a race to be simulated. */
    boolean simulates(Question question, Effort effort) {
        return effort.simulateRaces() && knowledge.simulated(question.position());
    }

    /** Lets games be played until it is told to stop. */
    RolloutListener gamesListener() {
        return new RolloutListener() {
            @Override
            public boolean round(RolloutReport report) {
                return !Thinking.this.stopped();
            }

            @Override
            public boolean stopped() {
                return Thinking.this.stopped();
            }
        };
    }

    long evaluations() {
        return lookahead == null ? 0 : lookahead.evaluations();
    }

    double hitRate() {
        return lookahead == null ? 0 : lookahead.hitRate();
    }

    @Override
    public void close() {
        races.close();
        if (lookahead != null) {
            lookahead.close();
        }
    }
}
