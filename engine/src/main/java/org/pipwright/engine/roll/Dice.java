package org.pipwright.engine.roll;

import java.util.SplittableRandom;

/**
 * A seeded stream of rolls for one game. Games are told apart by their number, so that a run can be resumed, or played
 * by any number of threads, with the same dice: no generator state has to be kept.
 */
public final class Dice {
    private final SplittableRandom random;

    private Dice(long seed) {
        random = new SplittableRandom(seed);
    }

    /**
     * The dice of one game of a run.
     *
     * @param seed the run's seed
     * @param game the game's number
     * @return a fresh stream, the same for the same arguments
     */
    public static Dice ofGame(long seed, long game) {
        return new Dice(mix(mix(seed) + game));
    }

    /** The finaliser of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014), so that neighbouring numbers give unlike streams. */
    private static long mix(long z) {
        long mixed = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ mixed >>> 27) * 0x94D049BB133111EBL;
        return mixed ^ mixed >>> 31;
    }

    /**
     * Throws two dice.
     *
     * @return each of the 36 throws equally likely
     */
    public Roll next() {
        int face = random.nextInt(36);
        return Roll.of(face / 6 + 1, face % 6 + 1);
    }

    /**
     * The opening throw: one die each, thrown again while they are equal.
     *
     * @return a roll that is no double, each of the 15 equally likely
     */
    public Roll opening() {
        Roll roll = next();
        while (roll.isDouble()) {
            roll = next();
        }
        return roll;
    }

    /**
     * A number for choices that are not dice (who starts, ties).
     *
     * @param bound upper limit, exclusive, at least 1
     * @return 0 to bound - 1, each equally likely
     */
    public int below(int bound) {
        return random.nextInt(bound);
    }
}
