package org.pipwright.engine.rollout;

import java.util.function.Supplier;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/**
 * The dice of one trial. The first two throws are stratified: every 36 trials each throw of two dice comes first once and
 * second once, and every 1,296 trials each pair of throws once (a Latin square with its rows and columns shuffled afresh
 * for each block; McKay, Beckman, Conover, Technometrics 21 (1979), 239-245, for the idea). Any single trial still has
 * all pairs equally likely. Later throws are independent.
 */
public final class TrialDice implements Supplier<Roll> {
    /** Equally likely throws of two dice. */
    public static final int THROWS = 36;

    /** Trials after which every pair of first throws has come once. */
    static final int BLOCK = THROWS * THROWS;

    /** Sets the shuffles apart from the dice of all games. */
    private static final long SHUFFLES = 0x5368_7566_666C_65L;

    private final Dice later;
    private final int[] first = new int[2];
    private int thrown;

    /**
     * The dice of one trial.
     *
     * @param seed seed of all trials
     * @param trial its number, from 0
     */
    public TrialDice(long seed, long trial) {
        Dice shuffle = Dice.ofGame(seed ^ SHUFFLES, trial / BLOCK);
        int[] firsts = shuffled(shuffle);
        int[] seconds = shuffled(shuffle);
        int inBlock = (int) (trial % BLOCK);
        int column = inBlock % THROWS;
        first[0] = firsts[column];
        first[1] = seconds[(column + inBlock / THROWS) % THROWS];
        later = Dice.ofGame(seed, trial);
    }

    /** Fisher and Yates. */
    private static int[] shuffled(Dice dice) {
        int[] numbers = new int[THROWS];
        for (int i = 0; i < THROWS; i++) {
            int j = dice.below(i + 1);
            numbers[i] = numbers[j];
            numbers[j] = i;
        }
        return numbers;
    }

    @Override
    public Roll get() {
        if (thrown == first.length) {
            return later.next();
        }
        int face = first[thrown++];
        return Roll.of(face / 6 + 1, face % 6 + 1);
    }
}
