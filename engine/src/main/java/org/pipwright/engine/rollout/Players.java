package org.pipwright.engine.rollout;

import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;

/** Who plays the trials of a rollout. */
interface Players extends AutoCloseable {
    /**
     * Plays rounds of {@value RolloutSettings#ROUND} trials of every candidate, until enough is known or it is told to stop;
     * a round that is not over then is dropped.
     *
     * @param candidates what is played out
     * @param first number of the first trial
     * @param trials number behind the last, whole rounds after the first
     * @param taken given the {@link Candidates#numbers} of each round, in order; whether more are wanted
     * @param stopped asked before each roll whether to end at once
     */
    void rounds(Candidates candidates, int first, int trials, Predicate<double[]> taken, BooleanSupplier stopped);

    /** How they judge under given stakes. */
    CubeTerms terms(Stakes stakes);

    @Override
    void close();
}
