package org.pipwright.engine.explain;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * What the opponent's next roll can do at once, under all rules about playing both dice.
 *
 * @param blots the blots it may hit, from low to high
 * @param shots how many of its 36 throws can hit at least one of them, 0 to 36
 * @param idle how many of its 36 throws let it move nothing, 0 to 36
 */
public record Exposure(List<Blot> blots, int shots, int idle) {
    /**
     * Keeps the blots.
     *
     * @param blots from low to high
     * @param shots 0 to 36
     * @param idle 0 to 36
     */
    public Exposure {
        blots = List.copyOf(blots);
    }

    /**
     * The exposure of a side that has just played.
     *
     * @param next the position with the opponent on roll
     * @return the exposure of the side that is not on roll; no shots if the game is over
     */
    public static Exposure of(Position next) {
        int[] planes = next.toPlanes();
        int blots = planes[Planes.SIDE] & ~Planes.held(planes, Planes.SIDE) & Planes.POINTS;
        int[] perPoint = new int[Planes.PLACES];
        int shots = 0;
        int idle = 0;
        PlayGenerator generator = new PlayGenerator();
        for (Roll roll : next.finished() ? List.<Roll>of() : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int hit = blots & ~standing(generator.results(), count);
            shots += hit == 0 ? 0 : roll.ways();
            for (int rest = hit; rest != 0; rest &= rest - 1) {
                perPoint[Integer.numberOfTrailingZeros(rest)] += roll.ways();
            }
            idle += count == 1 && same(planes, generator.results()) ? roll.ways() : 0;
        }
        return new Exposure(listed(blots, perPoint), shots, idle);
    }

    /** The other side's points that are occupied after every play. */
    private static int standing(int[] results, int count) {
        int standing = Planes.POINTS;
        for (int i = 0; i < count; i++) {
            standing &= Planes.occupied(results, i * Planes.STRIDE + Planes.SIDE);
        }
        return standing;
    }

    private static boolean same(int[] planes, int[] results) {
        for (int k = 0; k < Planes.STRIDE; k++) {
            if (planes[k] != results[k]) {
                return false;
            }
        }
        return true;
    }

    private static List<Blot> listed(int blots, int[] perPoint) {
        List<Blot> listed = new ArrayList<>();
        for (int rest = blots; rest != 0; rest &= rest - 1) {
            int point = Integer.numberOfTrailingZeros(rest);
            listed.add(new Blot(point, perPoint[point]));
        }
        return listed;
    }
}
