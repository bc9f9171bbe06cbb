package org.pipwright.engine.explain;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** What a side could do with its next roll if the opponent left the board as it is. */
final class Prospects {
    /** From the lowest of these points to the highest: the bar point and what is worth holding in front of it. */
    private static final int LOW = 3;

    private static final int HIGH = 7;

    /** The same points as the opponent counts them: its bar point, and anchors. */
    static final int WANTED = points(LOW, HIGH) | points(Planes.BAR - HIGH, Planes.BAR - LOW);

    private Prospects() {}

    private static int points(int from, int to) {
        return (1 << to + 1) - (1 << from);
    }

    /**
     * How many of 36 throws let a side hold one more of the points 3 to 7 and 18 to 22 than now (which points are worth
     * making: common practice, no source).
     *
     * @param position an unfinished position whose first side is meant
     * @return 0 to 36
     */
    static int newPoints(Position position) {
        int[] planes = position.toPlanes();
        int now = held(planes, 0);
        PlayGenerator generator = new PlayGenerator();
        int throwsThatDo = 0;
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            boolean more = false;
            for (int i = 0; i < count && !more; i++) {
                more = held(generator.results(), i * Planes.STRIDE) > now;
            }
            throwsThatDo += more ? roll.ways() : 0;
        }
        return throwsThatDo;
    }

    static boolean wanted(int point) {
        return (WANTED >>> point & 1) != 0;
    }

    private static int held(int[] planes, int at) {
        return Integer.bitCount(Planes.held(planes, at) & WANTED);
    }
}
