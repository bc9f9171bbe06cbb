package org.pipwright.engine.duel;

import java.util.function.Consumer;
import org.pipwright.engine.statistics.SequentialTest;

/**
 * A duel with the cube, over money games or matches: every dice sequence is played twice with sides swapped, by any number
 * of threads with the same result. In matches the two of a pair share the dice of their first games, their second games
 * and so on, whatever the scores have become.
 */
public final class CubefulDuel {
    private final PairBlocks<CubefulTally> blocks;

    /**
     * A duel about to be played; an instance serves one {@link #run}.
     *
     * @param a one side
     * @param b the other
     * @param settings what decides the duel
     * @param progress told of the tally so far after each block of pairs, in order, one call at a time
     */
    public CubefulDuel(CubefulEntrant a, CubefulEntrant b, CubefulSettings settings, Consumer<CubefulTally> progress) {
        blocks = new PairBlocks<>(
                settings.pairs(),
                stopped -> new CubefulPairPlayer(a, b, settings, stopped)::play,
                CubefulTally.NONE,
                CubefulTally::plus,
                total -> settings.test()
                        .map(test -> test.verdict(total.best()) != SequentialTest.Verdict.UNDECIDED)
                        .orElse(false),
                progress);
    }

    /**
     * Plays the duel to its end.
     *
     * @param threads number of threads, at least 1
     * @return the tally of all pairs, or of those up to the verdict or to {@link #stop}
     */
    public CubefulTally run(int threads) {
        return blocks.run(threads);
    }

    /** Ends the duel early, from any thread: {@link #run} soon returns what is known, blocks under way left out. */
    public void stop() {
        blocks.stop();
    }
}
