package org.pipwright.bench;

import picocli.CommandLine.Option;

/** What random numbers begin from. */
public final class SeedOption {
    @Option(names = "--seed", paramLabel = "N", description = "Seed of the dice (default: ${DEFAULT-VALUE}).")
    @Within(min = 0, max = Integer.MAX_VALUE)
    private int seed = 1;

    /** The seed. */
    public int value() {
        return seed;
    }
}
