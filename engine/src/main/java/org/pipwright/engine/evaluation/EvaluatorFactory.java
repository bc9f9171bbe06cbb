package org.pipwright.engine.evaluation;

/** Makes evaluators that share what they know but not their buffers: one for each thread. Itself safe for all threads. */
@FunctionalInterface
public interface EvaluatorFactory {
    /**
     * Makes an evaluator.
     *
     * @return a fresh one, for one thread
     */
    PositionEvaluator create();
}
