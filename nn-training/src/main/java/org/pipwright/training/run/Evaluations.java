package org.pipwright.training.run;

import java.util.Optional;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.match.PipLeader;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.training.report.Evaluation;

/** Plays the games that evaluate a net. */
final class Evaluations {
    /** Dice apart from those of self-play. */
    private static final long SEED = 0x6A09E667F3BCC908L;

    private Evaluations() {}

    static Evaluation of(Model model, RunKnowledge knowledge, Position start, int games, int threads) {
        Entrant net =
                Entrant.ofEvaluator("net", () -> knowledge.of(model).judgement().evaluator(), 0);
        Entrant pips = Entrant.of("pips", PipLeader::new);
        DuelSettings settings = new DuelSettings(
                new Contest.Cubeless(start, true), Math.max(1, games / 2), SEED, false, Optional.empty());
        Tally tally = new Duel(net, pips, settings, soFar -> {}).run(threads);
        return new Evaluation(
                (int) tally.games(), tally.values().mean(), tally.values().standardError());
    }
}
