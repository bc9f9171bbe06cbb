package org.pipwright.training.cuda;

import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** Games of a small net against itself, whose chances a new network copies to begin with. Serves one thread. */
final class CopyGames {
    /** Results of a turn that become lessons besides the best. */
    private static final int OTHERS = 3;

    private final PlayGenerator generator = new PlayGenerator();
    private final PositionEvaluator evaluator;
    private final SplittableRandom random;
    private final int[] planes = new int[8];
    private final int[] swapped = new int[8];
    private float[] chances = new float[6 * 4096];
    private boolean over = true;

    CopyGames(Model model, SplittableRandom random) {
        this.evaluator = new NetworkEvaluator(model);
        this.random = random;
    }

    /** Plays on until there are so many lessons. */
    void play(int lessons, LessonList out) {
        while (out.size() < lessons) {
            if (over) {
                Position.start().copyTo(planes, 0);
                over = false;
            }
            turn(out);
        }
    }

    private void turn(LessonList out) {
        int die = random.nextInt(6) + 1;
        int other = random.nextInt(6) + 1;
        int count = generator.generate(planes, 0, Math.max(die, other), Math.min(die, other));
        if (chances.length < 6 * count) {
            chances = new float[12 * count];
        }
        evaluator.evaluateResults(planes, 0, generator.results(), count, chances);
        int best = 0;
        for (int k = 1; k < count; k++) {
            if (Chances.equity(chances, 6 * k) > Chances.equity(chances, 6 * best)) {
                best = k;
            }
        }
        for (int k = 0; k < OTHERS; k++) {
            add(random.nextInt(count), out);
        }
        add(best, out);
        // One turn in ten at random, so that odd positions are seen as well.
        int chosen = random.nextInt(10) == 0 ? random.nextInt(count) : best;
        over = (Planes.occupied(generator.results(), 8 * chosen) & Planes.ON_BOARD) == 0;
        Planes.copySwapped(generator.results(), 8 * chosen, planes, 0);
    }

    private void add(int result, LessonList out) {
        if ((Planes.occupied(generator.results(), 8 * result) & Planes.ON_BOARD) == 0) {
            return;
        }
        Planes.copySwapped(generator.results(), 8 * result, swapped, 0);
        float[] target = new float[6];
        System.arraycopy(chances, 6 * result, target, 0, 6);
        Chances.swap(target, 0);
        out.add(swapped, 0, target, 0);
    }
}
