package org.pipwright.engine.explain;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Rolls of a side that leave a shot however it plays them: what bringing home and bearing off against contact is about. */
final class NextShots {
    private final PlayGenerator mine = new PlayGenerator();
    private final PlayGenerator theirs = new PlayGenerator();
    private final int[] swapped = new int[Planes.STRIDE];

    private NextShots() {}

    /**
     * Counts them.
     *
     * @param position an unfinished position whose first side is meant; the other leaves the board as it is
     * @return of 36 throws those after each play of which some throw of the other side can hit, 0 to 36
     */
    static int of(Position position) {
        int[] planes = position.toPlanes();
        NextShots shots = new NextShots();
        int all = 0;
        for (Roll roll : Roll.all()) {
            all += shots.unsafe(planes, roll) ? roll.ways() : 0;
        }
        return all;
    }

    private boolean unsafe(int[] planes, Roll roll) {
        int count = mine.generate(planes, 0, roll.high(), roll.low());
        for (int i = 0; i < count; i++) {
            if (!hittable(mine.results(), i * Planes.STRIDE)) {
                return false;
            }
        }
        return true;
    }

    private boolean hittable(int[] planes, int at) {
        int blots = planes[at] & ~Planes.held(planes, at) & Planes.POINTS;
        int rearmost = Planes.rearmost(planes, at + Planes.SIDE);
        // A checker of theirs on place q stands on my point 25 - q and hits only what stands above it.
        if ((blots & -1 << Math.max(0, Planes.BAR - rearmost)) == 0) {
            return false;
        }
        Planes.copySwapped(planes, at, swapped, 0);
        int bar = Planes.count(swapped, Planes.SIDE, Planes.BAR);
        for (Roll roll : Roll.all()) {
            int count = theirs.generate(swapped, 0, roll.high(), roll.low());
            for (int i = 0; i < count; i++) {
                if (Planes.count(theirs.results(), i * Planes.STRIDE + Planes.SIDE, Planes.BAR) > bar) {
                    return true;
                }
            }
        }
        return false;
    }
}
