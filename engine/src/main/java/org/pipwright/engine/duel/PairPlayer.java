package org.pipwright.engine.duel;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollLuck;
import org.pipwright.engine.statistics.RunningMean;

/** Plays numbered pairs of games for one thread. */
final class PairPlayer {
    private final DuelSettings settings;
    private final GameLoop loop = new GameLoop();
    private final Player a;
    private final Player b;
    private final GameLuck luck;
    private final TurnListener listener;

    private Wins aWins;
    private Wins bWins;
    private long turns;

    /** Each game ends with a {@link CancellationException} at the first turn after {@code stopped} says so. */
    PairPlayer(Entrant a, Entrant b, DuelSettings settings, BooleanSupplier stopped) {
        this.settings = settings;
        this.a = a.players().get();
        this.b = b.players().get();
        this.luck = settings.luck() ? new GameLuck(luck(a, b), luck(b, a)) : null;
        TurnListener measure = luck == null ? TurnListener.NONE : luck;
        this.listener = (planes, roll, legal, chosen) -> {
            if (stopped.getAsBoolean()) {
                throw new CancellationException("the duel was stopped");
            }
            measure.turn(planes, roll, legal, chosen);
        };
    }

    /** A side's rolls are valued by its own valuer, or else by the other side's, so that A and B can be exchanged. */
    private static RollLuck luck(Entrant own, Entrant other) {
        Supplier<PositionEvaluator> valuers = own.valuers().or(other::valuers).orElseThrow();
        return new RollLuck(valuers.get());
    }

    /** Plays the pairs from {@code from} to {@code to}, exclusive. */
    Tally play(long from, long to) {
        aWins = Wins.NONE;
        bWins = Wins.NONE;
        turns = 0;
        RunningMean points = RunningMean.NONE;
        RunningMean adjusted = RunningMean.NONE;
        for (long pair = from; pair < to; pair++) {
            int plain = game(pair, true);
            double lucky = luck == null ? 0 : luck.total();
            plain += game(pair, false);
            points = points.plus(plain / 2.0);
            if (luck != null) {
                // The sum of both comes first: exact antisymmetry when A and B are exchanged.
                adjusted = adjusted.plus((plain - (lucky + luck.total())) / 2);
            }
        }
        return new Tally(aWins, bWins, points, adjusted, turns);
    }

    /** Plays one game; both games of a pair have the same dice, and the same ties from a stream of their own. */
    private int game(long pair, boolean aStarts) {
        Dice dice = Dice.ofGame(settings.seed(), pair);
        Dice ties = Dice.ofGame(~settings.seed(), pair);
        Roll first = settings.openingRoll() ? dice.opening() : dice.next();
        if (luck != null) {
            luck.begin(aStarts, settings.openingRoll());
        }
        int starters = loop.play(settings.start(), first, aStarts ? a : b, aStarts ? b : a, dice, ties, listener);
        turns += loop.turns();
        int points = aStarts ? starters : -starters;
        if (points > 0) {
            aWins = aWins.plus(points);
        } else {
            bWins = bWins.plus(-points);
        }
        return points;
    }
}
