package org.pipwright.engine.duel;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.StakedGames;
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
 * @param players makes a player without the cube for a thread; all of them must choose alike
 * @param valuers makes an evaluator for a thread, in points, that can value luck and judge the cube; empty if there is none
 * @param lookahead future rolls that the evaluators' choices average over
 * @param model the net that all this comes from; empty if it comes from none
 */
public record Entrant(
        String name,
        Supplier<Player> players,
        Optional<Supplier<PositionEvaluator>> valuers,
        int lookahead,
        Optional<Model> model) {
    /**
     * A player that no net stands behind.
     *
     * @param name what reports call it
     * @param players makes a player for a thread
     * @param valuers makes an evaluator for a thread, or empty
     * @param lookahead future rolls that the evaluators' choices average over
     */
    public Entrant(
            String name, Supplier<Player> players, Optional<Supplier<PositionEvaluator>> valuers, int lookahead) {
        this(name, players, valuers, lookahead, Optional.empty());
    }

    /**
     * A player with nothing that could value luck or judge the cube.
     *
     * @param name what reports call it
     * @param players makes a player for a thread
     * @return the entrant
     */
    public static Entrant of(String name, Supplier<Player> players) {
        return new Entrant(name, players, Optional.empty(), 0);
    }

    /**
     * Plays what an evaluator likes best for what counts, with lookahead; luck is valued by the evaluator alone.
     *
     * @param name what reports call it
     * @param evaluators makes an evaluator for a thread
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return the entrant
     * @throws IllegalArgumentException if the lookahead is out of range
     */
    public static Entrant ofEvaluator(String name, Supplier<PositionEvaluator> evaluators, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        Supplier<Player> players = lookahead == 0
                ? () -> new EvaluatingPlayer(evaluators.get())
                : () -> new LookaheadPlayer(
                        new Lookahead(Judgement.by(evaluators.get()), LookaheadSettings.DEFAULT), lookahead);
        return new Entrant(name, players, Optional.of(evaluators), lookahead);
    }

    /**
     * Plays what a net likes best.
     *
     * @param name what reports call it
     * @param model the net
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return the entrant
     * @throws IllegalArgumentException if the lookahead is out of range
     */
    public static Entrant ofModel(String name, Model model, int lookahead) {
        Entrant net = ofEvaluator(name, () -> new NetworkEvaluator(model), lookahead);
        return new Entrant(name, net.players, net.valuers, lookahead, Optional.of(model));
    }

    /** What one thread plays with. */
    StakedGames.Side side(Contest contest, Function<Stakes, CubeTerms> terms) {
        return contest.withCube()
                ? StakedGames.Side.judging(valuers.orElseThrow().get(), terms, lookahead)
                : StakedGames.Side.blind(players.get());
    }
}
