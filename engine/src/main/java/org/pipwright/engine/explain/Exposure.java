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
 * @param costly how many can take at least {@value #DEAR} pips: hits on the opponent's 1, 2 and 3 points, which cost hardly
 *     anything and which it seldom wants to make, are left out (common practice, no source)
 * @param idle how many of its 36 throws let it move nothing, 0 to 36
 * @param risk pips that its hits take if each throw is played to take the most, averaged over the 36: so a blot that has
 *     come a long way weighs more than one that has not
 */
public record Exposure(List<Blot> blots, int shots, int costly, int idle, double risk) {
    /** Hits that take fewer pips are not costly. */
    public static final int DEAR = 4;

    private static final double THROWS = 36;

    /**
     * Keeps the blots.
     *
     * @param blots from low to high
     * @param shots 0 to 36
     * @param costly 0 to 36, at most shots
     * @param idle 0 to 36
     * @param risk pips, at least 0
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
        int costly = 0;
        int idle = 0;
        int taken = 0;
        PlayGenerator generator = new PlayGenerator();
        for (Roll roll : next.finished() ? List.<Roll>of() : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int hit = blots & ~standing(generator.results(), count);
            shots += hit == 0 ? 0 : roll.ways();
            for (int rest = hit; rest != 0; rest &= rest - 1) {
                perPoint[Integer.numberOfTrailingZeros(rest)] += roll.ways();
            }
            int most = mostPips(generator.results(), count) - Planes.pips(planes, Planes.SIDE);
            taken += roll.ways() * most;
            costly += most < DEAR ? 0 : roll.ways();
            idle += count == 1 && same(planes, generator.results()) ? roll.ways() : 0;
        }
        return new Exposure(listed(blots, perPoint), shots, costly, idle, taken / THROWS);
    }

    /** The other side's points that are occupied after every play. */
    private static int standing(int[] results, int count) {
        int standing = Planes.POINTS;
        for (int i = 0; i < count; i++) {
            standing &= Planes.occupied(results, i * Planes.STRIDE + Planes.SIDE);
        }
        return standing;
    }

    /** The other side's pips after the play that leaves it with the most: they grow by hits alone. */
    private static int mostPips(int[] results, int count) {
        int most = 0;
        for (int i = 0; i < count; i++) {
            most = Math.max(most, Planes.pips(results, i * Planes.STRIDE + Planes.SIDE));
        }
        return most;
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
