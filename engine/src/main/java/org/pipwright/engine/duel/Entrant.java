package org.pipwright.engine.duel;

import java.util.Optional;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Model;

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
     * Plays what a net likes best, without lookahead.
     *
     * @param name what reports call it
     * @param model the net
     * @return the entrant
     */
    public static Entrant ofModel(String name, Model model) {
        return ofEvaluator(name, () -> new NetworkEvaluator(model));
    }
}
