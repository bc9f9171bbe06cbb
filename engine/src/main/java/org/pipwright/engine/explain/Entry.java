package org.pipwright.engine.explain;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * How the side on roll comes in from the bar.
 *
 * @param onBar its checkers on the bar
 * @param enters with how many of its 36 throws all of them come in; 36 if there are none
 */
public record Entry(int onBar, int enters) {
    /**
     * The entry of the side on roll.
     *
     * @param position an unfinished position
     * @return the throws
     */
    public static Entry of(Position position) {
        int[] planes = position.toPlanes();
        int onBar = Planes.count(planes, 0, Planes.BAR);
        PlayGenerator generator = new PlayGenerator();
        int enters = 0;
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            boolean in = false;
            for (int i = 0; i < count && !in; i++) {
                in = Planes.count(generator.results(), i * Planes.STRIDE, Planes.BAR) == 0;
            }
            enters += in ? roll.ways() : 0;
        }
        return new Entry(onBar, enters);
    }
}
