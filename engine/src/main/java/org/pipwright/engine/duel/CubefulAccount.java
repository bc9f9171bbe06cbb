package org.pipwright.engine.duel;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cubeplay.CubefulGames;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.statistics.RunningMean;

/** Keeps count while the games of a duel with the cube are played, one after another, by one thread. */
final class CubefulAccount implements CubefulGames.Watcher {
    private final CubefulLuck luck;
    private final BooleanSupplier stopped;
    private CubeGame game;
    private boolean aFirst;
    private boolean aStarts;
    private boolean aOnRoll;
    private boolean opening;
    private double lucky;

    private CubefulWins aWins = CubefulWins.NONE;
    private CubefulWins bWins = CubefulWins.NONE;
    private CubeUse cube = CubeUse.NONE;
    private long turns;

    /**
     * An account.
     *
     * @param luck measures luck; null to leave it out
     * @param stopped whether to end the game being played, with a {@link CancellationException}
     */
    CubefulAccount(CubefulLuck luck, BooleanSupplier stopped) {
        this.luck = luck;
        this.stopped = stopped;
    }

    /** A money game or a match begins, A being its first side or its second. */
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
        begins(starts, next);
        if (luck != null) {
            double value = luck.ofStarting(next.stakes());
            lucky += aStarts ? value : -value;
        }
    }

    /** A game begins. */
    void begins(boolean starts, CubeGame next) {
        game = next;
        aStarts = starts == aFirst;
        aOnRoll = aStarts;
        opening = true;
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
        cube = cube.plus(game.passed(), shown);
    }

    /** All games so far, with the given values of pairs. */
    CubefulTally tally(RunningMean values, RunningMean adjusted) {
        return new CubefulTally(values, adjusted, aWins, bWins, cube, turns);
    }
}
