package org.pipwright.training.cuda;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/**
 * Which sides of a lane's games fixed formulas play, and for how many turns. One side is always a formula's; the other is
 * another formula's or the network's, with equal chances.
 */
final class FormulaSides {
    private static final List<Supplier<Player>> FORMULAS =
            List.of(formula("racer"), formula("hitter"), formula("builder"), formula("waiter"));

    private static final byte NETWORK = -1;

    private final double share;
    private final int maxTurns;

    /** Formula of each game's two sides, the one that begins first, by index. */
    private final byte[] formulas;

    private final int[] until;

    FormulaSides(int games, GameRules rules) {
        share = rules.formulaGames();
        maxTurns = rules.maxFormulaTurns();
        formulas = new byte[2 * games];
        until = new int[games];
    }

    private static Supplier<Player> formula(String name) {
        return () -> Baselines.named(name).orElseThrow().players().get();
    }

    /** Draws who plays a new game. */
    void begin(int game, SplittableRandom random) {
        until[game] = 0;
        // Nothing is drawn where there are no such games, so that a seed goes on to mean the same.
        if (share == 0 || random.nextDouble() >= share) {
            return;
        }
        until[game] = 1 + random.nextInt(maxTurns);
        int side = random.nextInt(2);
        formulas[2 * game + side] = (byte) random.nextInt(FORMULAS.size());
        formulas[2 * game + 1 - side] = random.nextBoolean() ? NETWORK : (byte) random.nextInt(FORMULAS.size());
    }

    /** Whether a formula makes the play of a game's turn, the first of which is 0. */
    boolean plays(int game, int turn) {
        return turn < until[game] && formulas[2 * game + turn % 2] != NETWORK;
    }

    /** The formulas for one thread. */
    static final class Players {
        private final Player[] players = FORMULAS.stream().map(Supplier::get).toArray(Player[]::new);
        private final Dice unused = Dice.ofGame(0, 0);

        /** The result that a side's formula chooses, of those just generated. */
        int choose(FormulaSides sides, int game, int turn, int[] planes, PlayGenerator plays) {
            return players[sides.formulas[2 * game + turn % 2]].choose(planes, 8 * game, plays, unused);
        }
    }
}
