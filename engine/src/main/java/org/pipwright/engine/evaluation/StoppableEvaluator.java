package org.pipwright.engine.evaluation;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * Another evaluator until it is told to stop; from then on it throws a {@link CancellationException}. For work that can take
 * minutes, and whoever stops it should not wait.
 */
public final class StoppableEvaluator implements PositionEvaluator {
    private final PositionEvaluator evaluator;
    private final PositionEvaluator quick;
    private final BooleanSupplier stopped;

    /**
     * An evaluator.
     *
     * @param evaluator what it asks
     * @param stopped asked before each evaluation whether to give up
     */
    public StoppableEvaluator(PositionEvaluator evaluator, BooleanSupplier stopped) {
        this.evaluator = evaluator;
        this.stopped = stopped;
        PositionEvaluator first = evaluator.quick();
        quick = first == evaluator ? this : new StoppableEvaluator(first, stopped);
    }

    private void goOn() {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the evaluation was stopped");
        }
    }

    @Override
    public PositionEvaluator quick() {
        return quick;
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        goOn();
        evaluator.evaluate(planes, at, out, outAt);
    }

    @Override
    public void evaluateResults(int[] parent, int parentAt, int[] results, int count, float[] out) {
        goOn();
        evaluator.evaluateResults(parent, parentAt, results, count, out);
    }
}
