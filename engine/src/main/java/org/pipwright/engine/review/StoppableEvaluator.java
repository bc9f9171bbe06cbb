package org.pipwright.engine.review;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.evaluation.PositionEvaluator;

/** Another evaluator until it is told to stop: a turn can take minutes, and whoever stops a review should not wait. */
final class StoppableEvaluator implements PositionEvaluator {
    private final PositionEvaluator evaluator;
    private final BooleanSupplier stopped;

    StoppableEvaluator(PositionEvaluator evaluator, BooleanSupplier stopped) {
        this.evaluator = evaluator;
        this.stopped = stopped;
    }

    private void goOn() {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the review was stopped");
        }
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
