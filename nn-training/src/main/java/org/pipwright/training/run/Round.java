package org.pipwright.training.run;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.training.parallel.Workers;
import org.pipwright.training.selfplay.Samples;
import org.pipwright.training.selfplay.SelfPlay;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** The games of one round and their samples, in the order of the games whoever played them. */
final class Round {
    /** Samples of positions with contact. */
    final Samples contact = new Samples(1 << 15);
    /** Samples of races. */
    final Samples race = new Samples(1 << 14);
    /** Games by points of the winner: index 1, 2 or 3. */
    final int[] byPoints = new int[4];

    long turns;

    /** Plays the games from {@code first} on. */
    static Round play(Model model, TrainingSettings settings, long first, int games, float lambda, Workers workers) {
        Position start = Position.start((int) settings.whole(Setting.CHECKERS));
        boolean doublesMayOpen = settings.text(Setting.OPENING).equals("any");
        double varied = settings.number(Setting.VARIED);
        long seed = settings.whole(Setting.SEED);
        List<SelfPlay> players = new ArrayList<>();
        for (int w = 0; w < workers.count(); w++) {
            players.add(new SelfPlay(new NetworkEvaluator(model), start, varied, doublesMayOpen));
        }
        Samples[] samples = new Samples[games];
        int[] points = new int[games];
        workers.run(games, (worker, game) -> {
            samples[game] = new Samples(64);
            points[game] = players.get(worker).play(Dice.ofGame(seed, first + game), lambda, samples[game]);
        });
        Round round = new Round();
        for (int game = 0; game < games; game++) {
            round.add(samples[game], points[game]);
        }
        return round;
    }

    private void add(Samples samples, int points) {
        byPoints[points]++;
        turns += samples.size();
        for (int i = 0; i < samples.size(); i++) {
            boolean touching = Planes.contact(samples.planes(), i * Planes.STRIDE);
            (touching ? contact : race).add(samples.planes(), i * Planes.STRIDE, samples.targets(), i * Outcomes.COUNT);
        }
    }
}
