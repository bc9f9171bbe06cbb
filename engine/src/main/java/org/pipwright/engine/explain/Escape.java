package org.pipwright.engine.explain;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * What a side's checkers behind the opponent's longest row of points can do with its next roll.
 *
 * @param behind its checkers that are not past the row, those on the bar included; 0 if there is no such row
 * @param escapes with how many of its 36 throws it can bring at least one of them past the row; 36 if none is behind
 */
public record Escape(int behind, int escapes) {
    /** Nothing is behind a row that is worth the name. */
    public static final Escape FREE = new Escape(0, 36);

    /** Shorter rows are no obstacle worth counting (common practice, no source). */
    private static final int SHORTEST = 3;

    /**
     * The escape of the side on roll.
     *
     * @param position an unfinished position
     * @return the throws, by all rules about playing both dice
     */
    public static Escape of(Position position) {
        int[] planes = position.toPlanes();
        Prime row = Prime.of(planes, Planes.SIDE, 0);
        if (row.length() < SHORTEST) {
            return FREE;
        }
        int notPast = Planes.ON_BOARD & -1 << Planes.BAR - row.from() - row.length() + 1;
        int behind = Planes.checkers(planes, 0, notPast);
        PlayGenerator generator = new PlayGenerator();
        int escapes = 0;
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int least = behind;
            for (int i = 0; i < count; i++) {
                least = Math.min(least, Planes.checkers(generator.results(), i * Planes.STRIDE, notPast));
            }
            escapes += least < behind ? roll.ways() : 0;
        }
        return new Escape(behind, escapes);
    }
}
