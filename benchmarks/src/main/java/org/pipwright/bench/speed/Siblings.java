package org.pipwright.bench.speed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.PossibleOutcomes;

/**
 * The work of all inference benchmarks: the results of rolls in positions of net play, as the opponent sees them before
 * its roll, all with contact. Groups are the results of one roll; the last is cut short.
 */
public final class Siblings {
    /** Number of positions in all groups together. */
    static final int COUNT = 1000;

    /** One roll's results and the position they came from, all with the opponent on roll. */
    record Group(int[] base, int[] planes, int size) {}

    private final List<Group> groups = new ArrayList<>();
    private final int[] planes = new int[COUNT * Planes.STRIDE];

    public Siblings() {
        PlayGenerator generator = new PlayGenerator();
        int size = 0;
        int turn = 0;
        for (Position position : BenchPositions.netPlay()) {
            Roll roll = Roll.all().get(turn++ % Roll.COUNT);
            int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
            size += add(position, generator.results(), Math.min(count, COUNT - size), size);
        }
    }

    private int add(Position position, int[] results, int count, int size) {
        int[] children = new int[count * Planes.STRIDE];
        int kept = 0;
        for (int i = 0; i < count; i++) {
            if (Planes.contact(results, i * Planes.STRIDE)) {
                Planes.copySwapped(results, i * Planes.STRIDE, children, kept++ * Planes.STRIDE);
            }
        }
        if (kept > 0) {
            groups.add(new Group(position.swapped().toPlanes(), Arrays.copyOf(children, kept * Planes.STRIDE), kept));
            System.arraycopy(children, 0, planes, size * Planes.STRIDE, kept * Planes.STRIDE);
        }
        return kept;
    }

    List<Group> groups() {
        return groups;
    }

    /** All positions one after another. */
    int[] planes() {
        return planes;
    }

    /** The whole inputs of all positions one after another. */
    float[] encoded(FeatureSet set) {
        float[] inputs = new float[COUNT * set.inputs()];
        for (int i = 0; i < COUNT; i++) {
            set.encode(planes, i * Planes.STRIDE, inputs, i * set.inputs());
        }
        return inputs;
    }

    /** For each position and outcome, 1 if it is possible, else 0. */
    float[] possible() {
        float[] possible = new float[COUNT * Outcomes.COUNT];
        for (int i = 0; i < COUNT; i++) {
            int mask = PossibleOutcomes.of(planes, i * Planes.STRIDE);
            for (int k = 0; k < Outcomes.COUNT; k++) {
                possible[i * Outcomes.COUNT + k] = mask >> k & 1;
            }
        }
        return possible;
    }
}
