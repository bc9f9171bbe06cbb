package org.pipwright.engine.roll;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.text.Excerpt;

/** One of the 21 rolls of two dice: the higher die first. Immutable; the 21 instances are shared. */
@PublicApi
public final class Roll implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Number of different rolls. */
    public static final int COUNT = 21;

    private static final Roll[][] BY_DICE = new Roll[7][7];

    private static final List<Roll> ALL = all21();

    private static final List<Roll> OPENING =
            ALL.stream().filter(roll -> !roll.isDouble()).collect(Collectors.toUnmodifiableList());

    private final int index;
    private final int high;
    private final int low;

    private Roll(int index, int high, int low) {
        this.index = index;
        this.high = high;
        this.low = low;
    }

    private static List<Roll> all21() {
        List<Roll> all = new ArrayList<>(COUNT);
        for (int high = 1; high <= 6; high++) {
            for (int low = 1; low <= high; low++) {
                Roll roll = new Roll(all.size(), high, low);
                BY_DICE[high][low] = roll;
                BY_DICE[low][high] = roll;
                all.add(roll);
            }
        }
        return Collections.unmodifiableList(all);
    }

    /**
     * All 21 rolls.
     *
     * @return 1-1, 2-1, 2-2, 3-1 and so on; a roll's place in the list is its {@link #index()}
     */
    public static List<Roll> all() {
        return ALL;
    }

    /**
     * The rolls that can open a game: each side throws one die, equal dice are thrown again and the side with the higher
     * die starts, so there are no doubles and all of them are equally likely.
     *
     * @return the 15 rolls from 2-1 to 6-5
     */
    public static List<Roll> opening() {
        return OPENING;
    }

    /**
     * The roll of two dice.
     *
     * @param die one die, 1 to 6
     * @param other the other die, 1 to 6
     * @return the roll, the same for either order
     * @throws IllegalArgumentException if a die is out of range
     */
    public static Roll of(int die, int other) {
        if (die < 1 || die > 6 || other < 1 || other > 6) {
            throw new IllegalArgumentException("a die shows 1 to 6, not " + (die < 1 || die > 6 ? die : other));
        }
        return BY_DICE[die][other];
    }

    /**
     * Reads a roll.
     *
     * @param text two dice, as in {@code 3-1} or {@code 31}
     * @return the roll
     * @throws IllegalArgumentException if the text is no roll; the message says so in one line
     */
    public static Roll parse(String text) {
        String dice = text.strip();
        if (!dice.matches("[1-6]-?[1-6]")) {
            throw new IllegalArgumentException(
                    "'" + Excerpt.of(dice) + "' is not a roll: write two dice from 1 to 6, as in 3-1 or 31");
        }
        return of(dice.charAt(0) - '0', dice.charAt(dice.length() - 1) - '0');
    }

    /**
     * Place among the 21 rolls.
     *
     * @return 0 to 20
     */
    public int index() {
        return index;
    }

    /**
     * The higher die.
     *
     * @return 1 to 6
     */
    public int high() {
        return high;
    }

    /**
     * The lower die.
     *
     * @return 1 to {@link #high()}
     */
    public int low() {
        return low;
    }

    /**
     * Whether both dice show the same, so that four steps are played.
     *
     * @return true for 1-1 to 6-6
     */
    public boolean isDouble() {
        return high == low;
    }

    /**
     * How many of the 36 equally likely throws of two dice give this roll.
     *
     * @return 1 for a double, else 2
     */
    public int ways() {
        return isDouble() ? 1 : 2;
    }

    /**
     * Chance of this roll.
     *
     * @return 1/36 for a double, else 2/36
     */
    public double probability() {
        return ways() / 36.0;
    }

    /** There is one object a roll, wherever it comes from. */
    private Object readResolve() {
        return of(high, low);
    }

    /** The dice as in {@code 3-1}. */
    @Override
    public String toString() {
        return high + "-" + low;
    }
}
