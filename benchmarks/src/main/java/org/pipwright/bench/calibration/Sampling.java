package org.pipwright.bench.calibration;

import java.io.Serializable;
import java.util.Arrays;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.bench.games.SelfPlayer;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.rules.PossibleOutcomes;

/**
 * Takes every so many positions of a game, before the roll, beginning with one of the first at random: neighbours are near
 * copies of each other, and every stage of a game gets its share.
 */
final class Sampling implements SelfGames.Game<Samples.OfGame>, Serializable {
    private static final long serialVersionUID = 1;

    private final int every;

    Sampling(int every) {
        this.every = every;
    }

    @Override
    public Samples.OfGame play(SelfPlayer player, Dice dice, Dice choices) {
        Taken taken = new Taken();
        int first = choices.below(every);
        float[] out = new float[Outcomes.COUNT];
        player.play(dice, (planes, roll, legal, chosen) -> taken.look(player, planes, first), out);
        int outcome = 0;
        while (out[outcome] == 0) {
            outcome++;
        }
        return taken.with(outcome);
    }

    private final class Taken {
        private float[] chances = new float[16 * Outcomes.COUNT];
        private byte[] masks = new byte[16];
        private boolean[] beginnerOnRoll = new boolean[16];
        private int size;
        private int turn;

        void look(SelfPlayer player, int[] planes, int first) {
            if (turn % every == first) {
                if (size == masks.length) {
                    resize(2 * size);
                }
                player.evaluate(planes, chances, size * Outcomes.COUNT);
                masks[size] = (byte) PossibleOutcomes.of(planes, 0);
                beginnerOnRoll[size++] = turn % 2 == 0;
            }
            turn++;
        }

        private void resize(int room) {
            chances = Arrays.copyOf(chances, room * Outcomes.COUNT);
            masks = Arrays.copyOf(masks, room);
            beginnerOnRoll = Arrays.copyOf(beginnerOnRoll, room);
        }

        Samples.OfGame with(int outcome) {
            resize(size);
            return new Samples.OfGame(chances, masks, beginnerOnRoll, outcome);
        }
    }
}
