package org.pipwright.bench.games;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.Judgement;

/** Many games of self-play by all threads; what each brings is handed on in the order of their numbers. */
public final class SelfGames implements AutoCloseable {
    /** Games a thread plays before they are handed on. */
    private static final int EACH = 16;

    private final Crew<SelfPlayer> crew;
    private final long seed;

    public SelfGames(Supplier<Judgement> judgements, int lookahead, long seed, int threads) {
        this.crew = new Crew<>(threads, () -> new SelfPlayer(judgements.get(), lookahead));
        this.seed = seed;
    }

    /** Plays one game and tells what it brought. */
    @FunctionalInterface
    public interface Game<R> {
        /** Random choices other than dice come from a stream of their own, so that they do not change the games. */
        R play(SelfPlayer player, Dice dice, Dice choices);
    }

    /** Plays games until somebody wants no more; those played beyond that are forgotten. */
    public <R> void play(Game<R> game, Predicate<R> wantsMore) {
        int size = EACH * crew.size();
        for (long first = 0; ; first += size) {
            for (R result : block(game, first, size)) {
                if (!wantsMore.test(result)) {
                    return;
                }
            }
        }
    }

    private <R> List<R> block(Game<R> game, long first, int size) {
        Object[] results = new Object[size];
        crew.run(size, (player, n) -> {
            results[n] = play(game, player, seed, first + n);
        });
        List<R> list = new ArrayList<>(size);
        for (Object result : results) {
            @SuppressWarnings("unchecked")
            R typed = (R) result;
            list.add(typed);
        }
        return list;
    }

    /** The game of a number, the same whoever plays it. */
    static <R> R play(Game<R> game, SelfPlayer player, long seed, long number) {
        return game.play(player, Dice.ofGame(seed, 2 * number), Dice.ofGame(seed, 2 * number + 1));
    }

    @Override
    public void close() {
        crew.close();
    }
}
