package org.pipwright.engine.play;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/** The rules for one checker and one die, in plain form for the borders; {@link PlayGenerator} has them as bit sets. */
final class StepRules {
    /** What keeps a die from being played from a place. */
    enum Obstacle {
        NONE,
        CHECKER_ON_BAR,
        NO_CHECKER,
        BLOCKED,
        NOT_ALL_HOME,
        CHECKER_ON_HIGHER_POINT
    }

    private StepRules() {}

    /** Where a die takes a checker from a place: 0 if it bears the checker off. */
    static int target(int from, int die) {
        return Math.max(Planes.OFF, from - die);
    }

    /** What keeps the side on roll from playing a die from a place, in a position of {@link Planes#STRIDE} ints. */
    static Obstacle obstacle(int[] planes, int from, int die) {
        if (from != Planes.BAR && Planes.count(planes, 0, Planes.BAR) > 0) {
            return Obstacle.CHECKER_ON_BAR;
        }
        if (Planes.count(planes, 0, from) == 0) {
            return Obstacle.NO_CHECKER;
        }
        return from > die ? landing(planes, from - die) : bearingOff(planes, from, die);
    }

    private static Obstacle landing(int[] planes, int to) {
        return Planes.count(planes, Planes.SIDE, 25 - to) >= 2 ? Obstacle.BLOCKED : Obstacle.NONE;
    }

    private static Obstacle bearingOff(int[] planes, int from, int die) {
        int rearmost = Planes.rearmost(planes, 0);
        if (rearmost > 6) {
            return Obstacle.NOT_ALL_HOME;
        }
        return from < die && from < rearmost ? Obstacle.CHECKER_ON_HIGHER_POINT : Obstacle.NONE;
    }

    /** Moves a checker of the side on roll, sends a blot there to the bar, and says whether there was one. */
    static boolean move(int[] planes, int from, int to) {
        Planes.remove(planes, 0, from);
        Planes.add(planes, 0, to);
        if (to == Planes.OFF || Planes.count(planes, Planes.SIDE, 25 - to) == 0) {
            return false;
        }
        Planes.remove(planes, Planes.SIDE, 25 - to);
        Planes.add(planes, Planes.SIDE, Planes.BAR);
        return true;
    }

    /** The dice of a roll in the order they are tried: the higher first, a double four times. */
    static int[] dice(Roll roll) {
        int high = roll.high();
        return roll.isDouble() ? new int[] {high, high, high, high} : new int[] {high, roll.low()};
    }
}
