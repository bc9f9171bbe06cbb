package org.pipwright.training.cuda;

import java.util.HashMap;
import java.util.Map;
import org.pipwright.engine.duel.CubeUse;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.duel.Wins;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.engine.statistics.SequentialTest;

/**
 * Counts games of a duel that end in any order. What is known is that of the first so many pairs, all of them over: long
 * games must not be left out when a duel stops early. A sequential test looks as often as it does on the processor.
 */
final class PairCount {
    private final DuelSettings settings;
    private final Map<Long, Game> early = new HashMap<>();
    private Tally tally = Tally.NONE;
    private boolean decided;

    /** A game that is over: points of A, rolls of both sides. */
    private record Game(int points, int turns) {}

    PairCount(DuelSettings settings) {
        this.settings = settings;
    }

    /** All first pairs that are over, up to the test's verdict. */
    Tally tally() {
        return tally;
    }

    /** Whether nothing is left to find out. */
    boolean enough() {
        return decided || tally.pairs() == settings.pairs();
    }

    /** A game is over: the second of pair n is number 2 n + 1. */
    void add(long number, int points, int turns) {
        early.put(number, new Game(points, turns));
        for (long pair = tally.pairs(); !decided && complete(pair); pair++) {
            Game first = early.remove(2 * pair);
            Game second = early.remove(2 * pair + 1);
            double mean = (first.points + second.points) / 2.0;
            tally = new Tally(
                    tally.values().plus(mean),
                    RunningMean.NONE,
                    wins(wins(tally.aWins(), first.points), second.points),
                    wins(wins(tally.bWins(), -first.points), -second.points),
                    CubeUse.NONE,
                    tally.turns() + first.turns + second.turns);
            decided = tally.pairs() % Duel.BLOCK == 0 && sure();
        }
    }

    private boolean complete(long pair) {
        return early.containsKey(2 * pair) && early.containsKey(2 * pair + 1);
    }

    private static Wins wins(Wins wins, int points) {
        return points > 0 ? wins.plus(points) : wins;
    }

    private boolean sure() {
        return settings.test()
                .map(test -> test.verdict(tally.values()) != SequentialTest.Verdict.UNDECIDED)
                .orElse(false);
    }
}
