package org.pipwright.training.run;

import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.training.selfplay.Samples;

/** The games of one round and their samples, in the order of the games whoever played them. */
final class Round {
    /** Samples of positions with contact. */
    final Samples contact = new Samples(1 << 15);
    /** Samples of races. */
    final Samples race = new Samples(1 << 14);
    /** Sum over the games of the chance that they ended as a gammon. */
    double gammons;
    /** The same of a backgammon. */
    double backgammons;

    long turns;

    /** Puts games together, which are in the order of their numbers. */
    static Round of(List<PlayedGame> games) {
        Round round = new Round();
        for (PlayedGame game : games) {
            float[] outcome = game.outcome();
            round.gammons += outcome[1] + outcome[4];
            round.backgammons += outcome[2] + outcome[5];
            round.turns += game.turns();
            round.add(game.samples());
        }
        return round;
    }

    private void add(Samples samples) {
        for (int i = 0; i < samples.size(); i++) {
            boolean touching = Planes.contact(samples.planes(), i * Planes.STRIDE);
            (touching ? contact : race).add(samples.planes(), i * Planes.STRIDE, samples.targets(), i * Outcomes.COUNT);
        }
    }
}
