package org.pipwright.engine.duel;

import java.util.List;
import java.util.function.Consumer;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.statistics.SequentialTest;

/**
 * A duel: every dice sequence is played twice with sides swapped, by any number of threads with the same result. In matches
 * the two of a pair share the dice of their first games, their second games and so on, whatever the scores have become.
 */
public final class Duel {
    /** Pairs that one thread plays in one go. */
    public static final int BLOCK = PairBlocks.BLOCK;

    private final Entrant a;
    private final Entrant b;
    private final DuelSettings settings;
    private final PairBlocks<Tally> blocks;

    /**
     * A duel about to be played; an instance serves one {@link #run}.
     *
     * @param a one side
     * @param b the other
     * @param settings what decides the duel
     * @param progress told of the tally so far after each block, in order, one call at a time
     * @throws IllegalArgumentException if luck is to be measured but neither side has a valuer, or if a side without one
     *     would have to judge the cube
     */
    public Duel(Entrant a, Entrant b, DuelSettings settings, Consumer<Tally> progress) {
        if (settings.luck() && a.valuers().isEmpty() && b.valuers().isEmpty()) {
            throw new IllegalArgumentException("luck is valued by a net, and neither " + a.name() + " nor " + b.name()
                    + " has one: leave luck out, or let a net play");
        }
        for (Entrant side : List.of(a, b)) {
            if (settings.contest().withCube() && side.valuers().isEmpty()) {
                throw new IllegalArgumentException(
                        side.name() + " is a formula and cannot judge the cube: let nets play with it");
            }
        }
        this.a = a;
        this.b = b;
        this.settings = settings;
        blocks = new PairBlocks<>(
                settings.pairs(),
                stopped -> new PairPlayer(a, b, settings, stopped)::play,
                Tally.NONE,
                Tally::plus,
                total -> decided(settings, total),
                progress);
    }

    private static boolean decided(DuelSettings settings, Tally total) {
        return settings.test()
                .map(test -> test.verdict(total.best()) != SequentialTest.Verdict.UNDECIDED)
                .orElse(false);
    }

    /**
     * Plays the duel to its end.
     *
     * @param threads number of threads, at least 1
     * @return the tally of all pairs, or of those up to the verdict or to {@link #stop}
     */
    public Tally run(int threads) {
        return blocks.run(threads);
    }

    /**
     * Plays the duel to its end on other machines.
     *
     * @param workforce the machines
     * @return the same tally as that of {@link #run(int)}
     * @throws IllegalArgumentException if a side is neither a net nor a baseline
     */
    public Tally run(Workforce workforce) {
        PairTrade trade = new PairTrade(
                PortableEntrant.of(a, workforce),
                PortableEntrant.of(b, workforce),
                settings.contest(),
                settings.seed(),
                settings.luck());
        return blocks.run((pairs, taken, stopped) -> workforce.inOrder(trade, pairs, taken, stopped));
    }

    /** Ends the duel early, from any thread: {@link #run} soon returns what is known, blocks under way left out. */
    public void stop() {
        blocks.stop();
    }
}
