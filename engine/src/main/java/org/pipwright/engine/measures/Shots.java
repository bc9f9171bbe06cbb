package org.pipwright.engine.measures;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * The rolls with which a side can hit: those that some legal play hits with, under all rules about playing both dice.
 *
 * @param rolls the rolls that hit, in the order of {@link Roll#all()}
 */
public record Shots(List<Roll> rolls) {
    /**
     * The shots of the side on roll.
     *
     * @param position an unfinished position
     * @return its rolls that hit
     */
    public static Shots of(Position position) {
        int[] planes = position.toPlanes();
        PlayGenerator generator = new PlayGenerator();
        return new Shots(Roll.all().stream()
                .filter(roll -> hits(generator, planes, roll))
                .collect(Collectors.toUnmodifiableList()));
    }

    private static boolean hits(PlayGenerator generator, int[] planes, Roll roll) {
        int before = Planes.count(planes, Planes.SIDE, Planes.BAR);
        int size = generator.generate(planes, 0, roll.high(), roll.low());
        for (int i = 0; i < size; i++) {
            int other = i * Planes.STRIDE + Planes.SIDE;
            if (Planes.count(generator.results(), other, Planes.BAR) > before) {
                return true;
            }
        }
        return false;
    }

    /**
     * How many of the 36 throws hit.
     *
     * @return 0 to 36
     */
    public int of36() {
        return rolls.stream().mapToInt(Roll::ways).sum();
    }
}
