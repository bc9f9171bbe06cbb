package org.pipwright.engine.duel;

import java.util.function.BooleanSupplier;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cubeplay.CubefulGames;
import org.pipwright.engine.cubeplay.TermsByStakes;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.statistics.RunningMean;

/** Plays numbered pairs of money games or matches for one thread. */
final class CubefulPairPlayer {
    /** More than the games of the longest match: each has dice of its own. */
    private static final int GAMES_OF_MATCH = 1 << 12;

    private final CubefulSettings settings;
    private final BooleanSupplier stopped;
    private final CubefulGames games = new CubefulGames();
    private final CubefulGames.Side a;
    private final CubefulGames.Side b;
    private final CubefulLuck luck;

    CubefulPairPlayer(CubefulEntrant a, CubefulEntrant b, CubefulSettings settings, BooleanSupplier stopped) {
        this.settings = settings;
        this.stopped = stopped;
        TermsByStakes terms = new TermsByStakes(settings.contest()::terms);
        this.a = CubefulGames.Side.judging(a.evaluators().get(), terms, a.lookahead());
        this.b = CubefulGames.Side.judging(b.evaluators().get(), terms, b.lookahead());
        luck = settings.luck()
                ? new CubefulLuck(a.evaluators().get(), b.evaluators().get(), terms)
                : null;
    }

    /** Plays the pairs from {@code from} to {@code to}, exclusive. */
    CubefulTally play(long from, long to) {
        CubefulAccount account = new CubefulAccount(luck, stopped);
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

    private double value(CubefulAccount account, long pair, boolean aFirst) {
        account.open(aFirst);
        CubefulGames.Side first = aFirst ? a : b;
        CubefulGames.Side second = aFirst ? b : a;
        Contest contest = settings.contest();
        if (contest instanceof Contest.Match) {
            int length = ((Contest.Match) contest).length();
            boolean firstWon = games.playMatch(
                    length, first, second, game -> Dice.ofGame(settings.seed(), pair * GAMES_OF_MATCH + game), account);
            return firstWon == aFirst ? 1 : 0;
        }
        CubeGame game = new CubeGame(((Contest.Money) contest).stakes());
        account.begins(true, game);
        int points = games.play(game, first, second, Dice.ofGame(settings.seed(), pair), account);
        account.ended(points);
        return aFirst ? points : -points;
    }
}
