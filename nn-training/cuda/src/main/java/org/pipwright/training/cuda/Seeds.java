package org.pipwright.training.cuda;

import java.util.SplittableRandom;

/** Seeds of everything random in a run, one after another; where it stands is one number that a checkpoint holds. */
final class Seeds {
    /** By which {@link SplittableRandom} goes on from number to number. */
    private static final long STEP = 0x9E3779B97F4A7C15L;

    private final long seed;
    private long given;

    Seeds(long seed, long given) {
        this.seed = seed;
        this.given = given;
    }

    synchronized long next() {
        return new SplittableRandom(seed + STEP * given++).nextLong();
    }

    /** How many were given so far. */
    synchronized long given() {
        return given;
    }
}
