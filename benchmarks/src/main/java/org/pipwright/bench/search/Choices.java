package org.pipwright.bench.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Choice;

/** Positions of net play with a random roll that leaves a choice. */
public final class Choices {
    private Choices() {}

    /** So many choices, the same for the same seed. */
    public static List<Choice> of(int count, long seed) {
        List<Position> positions = BenchPositions.netPlay();
        SplittableRandom random = new SplittableRandom(seed);
        PlayGenerator generator = new PlayGenerator();
        List<Choice> choices = new ArrayList<>();
        while (choices.size() < count) {
            int[] planes = positions.get(random.nextInt(positions.size())).toPlanes();
            Roll roll = Roll.of(random.nextInt(6) + 1, random.nextInt(6) + 1);
            int size = generator.generate(planes, 0, roll.high(), roll.low());
            if (size > 1) {
                choices.add(new Choice(planes, Arrays.copyOf(generator.results(), size * Planes.STRIDE), size));
            }
        }
        return choices;
    }
}
