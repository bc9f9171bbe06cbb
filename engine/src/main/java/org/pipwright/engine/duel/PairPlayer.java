package org.pipwright.engine.duel;

import java.util.function.BooleanSupplier;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.cubeplay.TermsByStakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.statistics.RunningMean;

/** Plays numbered pairs of games or matches for one thread. */
final class PairPlayer {
    /** More than the games of the longest match: each has dice of its own. */
    private static final int GAMES_OF_MATCH = 1 << 12;

    private final DuelSettings settings;
    private final BooleanSupplier stopped;
    private final StakedGames games = new StakedGames();
    private final StakedGames.Side a;
    private final StakedGames.Side b;
    private final DuelLuck luck;

    /** Each game ends with a cancellation at the first turn after {@code stopped} says so. */
    PairPlayer(Entrant a, Entrant b, DuelSettings settings, BooleanSupplier stopped) {
        this.settings = settings;
        this.stopped = stopped;
        Contest contest = settings.contest();
        TermsByStakes terms = new TermsByStakes(contest::terms);
        this.a = a.side(contest, terms);
        this.b = b.side(contest, terms);
        luck = settings.luck() ? new DuelLuck(valuer(a, b), valuer(b, a), terms) : null;
    }

    /** A side's rolls are valued by its own valuer, or else by the other side's, so that A and B can be exchanged. */
    private static PositionEvaluator valuer(Entrant own, Entrant other) {
        return own.valuers().or(other::valuers).orElseThrow().get();
    }

    /** Plays the pairs from {@code from} to {@code to}, exclusive. */
    Tally play(long from, long to) {
        Account account = new Account(luck, stopped);
        RunningMean values = RunningMean.NONE;
        RunningMean adjusted = RunningMean.NONE;
        for (long pair = from; pair < to; pair++) {
            double plain = value(account, pair, true);
            double lucky = account.luck();
            plain += value(account, pair, false);
            values = values.plus(plain / 2);
            if (luck != null) {
                // The sum of both comes first: exact antisymmetry when A and B are exchanged.
                adjusted = adjusted.plus((plain - (lucky + account.luck())) / 2);
            }
        }
        return account.tally(values, adjusted);
    }

    /** What A gets of one of a pair, both of which have the same dice. */
    private double value(Account account, long pair, boolean aFirst) {
        account.open(aFirst);
        StakedGames.Side first = aFirst ? a : b;
        StakedGames.Side second = aFirst ? b : a;
        Contest contest = settings.contest();
        if (contest instanceof Contest.Match) {
            int length = ((Contest.Match) contest).length();
            boolean firstWon = games.playMatch(
                    length, first, second, game -> Dice.ofGame(settings.seed(), pair * GAMES_OF_MATCH + game), account);
            return firstWon == aFirst ? 1 : 0;
        }
        CubeGame game = new CubeGame(contest.stakes());
        account.begins(true, contest.openingRoll(), game);
        Dice dice = Dice.ofGame(settings.seed(), pair);
        // Random choices have a stream of their own, so that the dice are the same whoever plays.
        Dice ties = Dice.ofGame(~settings.seed(), pair);
        int points = games.play(contest.start(), contest.openingRoll(), game, first, second, dice, ties, account);
        account.ended(points);
        return aFirst ? points : -points;
    }
}
