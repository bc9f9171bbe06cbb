package org.pipwright.training.run;

import java.util.Optional;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.match.PipLeader;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.training.report.Evaluation;
import org.pipwright.training.settings.EvaluationSettings;

/** Plays the games that evaluate a net. */
final class Evaluations {
    /** Dice apart from those of self-play, and others each time: so the errors of a curve's points are independent. */
    private static final long SEED = 0x6A09E667F3BCC908L;

    private Evaluations() {}

    /**
     * Plays them.
     *
     * @param rival a net, and then the luck of the rolls is taken off; empty for the baseline
     * @param trained games trained until now
     */
    static Evaluation of(
            Model model,
            RunKnowledge knowledge,
            Optional<Model> rival,
            Position start,
            int games,
            long trained,
            int threads) {
        Entrant pips = Entrant.of(EvaluationSettings.PIPS, PipLeader::new);
        DuelSettings settings = new DuelSettings(
                new Contest.Cubeless(start, true),
                Math.max(1, games / 2),
                SEED + trained,
                rival.isPresent(),
                Optional.empty());
        Entrant other = rival.map(net -> entrant(net, knowledge)).orElse(pips);
        RunningMean points = new Duel(entrant(model, knowledge), other, settings, soFar -> {})
                .run(threads)
                .best();
        return new Evaluation((int) (2 * points.count()), points.mean(), points.standardError());
    }

    private static Entrant entrant(Model model, RunKnowledge knowledge) {
        return Entrant.ofEvaluator("net", () -> knowledge.of(model).judgement().evaluator(), 0);
    }
}
