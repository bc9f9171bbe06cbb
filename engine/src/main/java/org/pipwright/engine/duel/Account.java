package org.pipwright.engine.duel;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.statistics.RunningMean;

/** Keeps count while the games of a duel are played, one after another, by one thread. */
final class Account implements StakedGames.Watcher {
    private final DuelLuck luck;
    private final BooleanSupplier stopped;
    private CubeGame game;
    private boolean aFirst;
    private boolean aStarts;
    private boolean aOnRoll;
    private boolean opening;
    private double lucky;

    private Wins aWins = Wins.NONE;
    private Wins bWins = Wins.NONE;
    private CubeUse cube = CubeUse.NONE;
    private long turns;

    /**
     * An account.
     *
     * @param luck measures luck; null to leave it out
     * @param stopped whether to end the game being played, with a {@link CancellationException}
     */
    Account(DuelLuck luck, BooleanSupplier stopped) {
        this.luck = luck;
        this.stopped = stopped;
    }

    /** A game or a match begins, A being its first side or its second. */
    void open(boolean first) {
        aFirst = first;
        lucky = 0;
    }

    /** A's luck less B's since {@link #open}. */
    double luck() {
        return lucky;
    }

    /** In a match the score must not favour the side that happens to start: who does is a matter of luck. */
    @Override
    public void begins(MatchScore score, boolean starts, CubeGame next) {
        begins(starts, true, next);
        if (luck != null) {
            double value = luck.ofStarting(next.stakes());
            lucky += aStarts ? value : -value;
        }
    }

    /** A game begins, perhaps with the roll that opens one, which is never a double. */
    void begins(boolean starts, boolean openingRoll, CubeGame next) {
        game = next;
        aStarts = starts == aFirst;
        aOnRoll = aStarts;
        opening = openingRoll;
    }

    @Override
    public void turn(int[] planes, Roll roll, PlayGenerator legal, int chosen) {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the duel was stopped");
        }
        if (luck != null) {
            double value = luck.ofRoll(aOnRoll, planes, roll, opening, game);
            lucky += aOnRoll ? value : -value;
        }
        aOnRoll = !aOnRoll;
        opening = false;
        turns++;
    }

    @Override
    public void ended(int points) {
        int shown = game.cube().value();
        boolean aWon = points > 0 == aFirst;
        int worth = Math.abs(points);
        aWins = aWon ? aWins.plus(game.passed(), worth, shown) : aWins;
        bWins = aWon ? bWins : bWins.plus(game.passed(), worth, shown);
        cube = game.stakes() instanceof CubelessStakes ? cube : cube.plus(game.passed(), shown);
    }

    /** All games so far, with the given values of pairs. */
    Tally tally(RunningMean values, RunningMean adjusted) {
        return new Tally(values, adjusted, aWins, bWins, cube, turns);
    }
}
