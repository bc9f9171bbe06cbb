package org.pipwright.training;

import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.selfplay.Samples;

/** Unfinished positions met by random play from the start, game after game, from one seed; and samples made of them. */
public final class RandomGames {
    private final PlayGenerator generator = new PlayGenerator();
    private final SplittableRandom random;
    private Position position = Position.start();

    public RandomGames(long seed) {
        random = new SplittableRandom(seed);
    }

    public Position next() {
        Position met = position;
        int one = 1 + random.nextInt(6);
        int two = 1 + random.nextInt(6);
        int count = generator.generate(met.toPlanes(), 0, Math.max(one, two), Math.min(one, two));
        position = Position.ofPlanes(generator.results(), random.nextInt(count) * Planes.STRIDE)
                .swapped();
        if (position.finished()) {
            position = Position.start();
        }
        return met;
    }

    /** The next position that fits. */
    public Position next(Predicate<Position> fits) {
        Position met = next();
        while (!fits.test(met)) {
            met = next();
        }
        return met;
    }

    /** Samples with or without contact whose targets are random chances of the possible outcomes. */
    public Samples samples(int count, boolean contact) {
        Samples samples = new Samples(16);
        for (int i = 0; i < count; i++) {
            int[] planes = next(met -> met.contact() == contact).toPlanes();
            samples.add(planes, 0, target(PossibleOutcomes.of(planes, 0)), 0);
        }
        return samples;
    }

    private float[] target(int possible) {
        double[] shares = new double[Outcomes.COUNT];
        double sum = 0;
        for (int k = 0; k < shares.length; k++) {
            shares[k] = (possible >> k & 1) != 0 ? Math.pow(random.nextDouble(), 3) : 0;
            sum += shares[k];
        }
        float[] target = new float[Outcomes.COUNT];
        for (int k = 0; k < target.length; k++) {
            target[k] = (float) (shares[k] / sum);
        }
        return target;
    }

    /** Indices 0 to count - 1 in random order. */
    public int[] order(int count) {
        int[] order = new int[count];
        for (int i = 0; i < count; i++) {
            int j = random.nextInt(i + 1);
            order[i] = order[j];
            order[j] = i;
        }
        return order;
    }
}
