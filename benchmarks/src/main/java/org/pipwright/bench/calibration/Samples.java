package org.pipwright.bench.calibration;

import java.io.Serializable;
import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.device.SelfPlayedGame;

/** Positions before the roll in the order of their games: what was predicted, what the rules allowed and what happened. */
final class Samples {
    private final float[] chances;
    private final byte[] masks;
    private final byte[] outcomes;
    private final int[] games;
    private int size;

    Samples(int most) {
        chances = new float[most * Outcomes.COUNT];
        masks = new byte[most];
        outcomes = new byte[most];
        games = new int[most];
    }

    /** The positions of one game, seen by the side on roll, and how it ended for the side that began. */
    record OfGame(float[] chances, byte[] masks, boolean[] beginnerOnRoll, int outcome) implements Serializable {
        int size() {
            return masks.length;
        }

        /** Number of the outcome for the side on roll. */
        int outcome(int i) {
            return beginnerOnRoll[i] ? outcome : (outcome + Outcomes.COUNT / 2) % Outcomes.COUNT;
        }
    }

    /** A game that a device played. Not the record's own, which machines read that know of no devices. */
    static OfGame ofDevice(SelfPlayedGame game) {
        byte[] masks = new byte[game.beginnerOnRoll().length];
        for (int i = 0; i < masks.length; i++) {
            masks[i] = (byte) PossibleOutcomes.of(game.planes(), Planes.STRIDE * i);
        }
        return new OfGame(game.chances(), masks, game.beginnerOnRoll(), game.outcome());
    }

    /** Adds positions while there is room; gives whether there is some left. */
    boolean add(int game, OfGame positions) {
        for (int i = 0; i < positions.size() && size < masks.length; i++) {
            System.arraycopy(positions.chances(), i * Outcomes.COUNT, chances, size * Outcomes.COUNT, Outcomes.COUNT);
            masks[size] = positions.masks()[i];
            outcomes[size] = (byte) positions.outcome(i);
            games[size++] = game;
        }
        return size < masks.length;
    }

    int size() {
        return size;
    }

    boolean possible(Chance chance, int i) {
        return chance.possible(masks[i]);
    }

    double predicted(Chance chance, int i) {
        return chance.of(chances, i * Outcomes.COUNT);
    }

    int happened(Chance chance, int i) {
        return chance.happened(outcomes[i]);
    }

    int game(int i) {
        return games[i];
    }

    /** Limits that part the predictions of a chance into ten lots of about equal size; equal ones are not parted. */
    double[] tenths(Chance chance) {
        double[] sorted = new double[size];
        int count = 0;
        for (int i = 0; i < size; i++) {
            if (possible(chance, i)) {
                sorted[count++] = predicted(chance, i);
            }
        }
        Arrays.sort(sorted, 0, count);
        double[] edges = new double[11];
        for (int k = 1; k < 10; k++) {
            edges[k] = count == 0 ? 0 : sorted[(int) ((long) count * k / 10)];
        }
        edges[10] = 1;
        return Arrays.stream(edges).distinct().toArray();
    }
}
