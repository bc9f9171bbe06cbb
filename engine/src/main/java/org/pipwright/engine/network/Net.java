package org.pipwright.engine.network;

/** What judges every unfinished position: two networks that share the work, or one for all. Immutable, shared by threads. */
public sealed interface Net permits Lanes, ResidualNetwork {
    /**
     * The shape in words.
     *
     * @return for instance {@code residual 256 x 2}
     */
    String shape();

    /**
     * How many numbers training has set.
     *
     * @return weights and biases
     */
    int weights();

    /**
     * The same net with every number rounded to half precision, which model files then store in two bytes each.
     *
     * @return the rounded net
     * @throws InvalidModelException if a number is too large for half precision
     */
    Net halved();
}
