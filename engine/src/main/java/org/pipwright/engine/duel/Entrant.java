package org.pipwright.engine.duel;

import java.util.Optional;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadPlayer;
import org.pipwright.engine.search.LookaheadSettings;

/**
 * Who takes part in a duel. Players and evaluators keep buffers, so each thread gets its own from the suppliers.
 *
 * @param name what reports call it
 * @param players makes a player for a thread; all of them must choose alike
 * @param valuers makes an evaluator for a thread, in points, that can value luck; empty if there is none
 */
public record Entrant(String name, Supplier<Player> players, Optional<Supplier<PositionEvaluator>> valuers) {
    /**
     * A player with nothing that could value luck.
     *
     * @param name what reports call it
     * @param players makes a player for a thread
     * @return the entrant
     */
    public static Entrant of(String name, Supplier<Player> players) {
        return new Entrant(name, players, Optional.empty());
    }

    /**
     * Plays what an evaluator likes best, and values luck with it.
     *
     * @param name what reports call it
     * @param evaluators makes an evaluator for a thread
     * @return the entrant
     */
    public static Entrant ofEvaluator(String name, Supplier<PositionEvaluator> evaluators) {
        return new Entrant(name, () -> new EvaluatingPlayer(evaluators.get()), Optional.of(evaluators));
    }

    /**
     * Plays what a net likes best, with lookahead; luck is valued by the net alone.
     *
     * @param name what reports call it
     * @param model the net
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return the entrant
     * @throws IllegalArgumentException if the lookahead is out of range
     */
    public static Entrant ofModel(String name, Model model, int lookahead) {
        Supplier<PositionEvaluator> evaluators = () -> new NetworkEvaluator(model);
        if (lookahead == 0) {
            return ofEvaluator(name, evaluators);
        }
        Supplier<Player> players = () -> {
            Judgement judgement = Judgement.by(evaluators.get());
            return new LookaheadPlayer(new Lookahead(judgement, LookaheadSettings.DEFAULT), lookahead);
        };
        return new Entrant(name, players, Optional.of(evaluators));
    }
}
