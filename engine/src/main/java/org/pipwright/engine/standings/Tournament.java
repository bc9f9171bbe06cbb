package org.pipwright.engine.standings;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.parallel.Workforce;

/** Plays duels of all against all, one after the other, each with dice of its own. */
public final class Tournament {
    private final List<Entrant> players;
    private final long pairs;
    private final long seed;
    private final boolean luck;
    private volatile boolean stopped;
    private volatile Duel current;

    /**
     * A tournament about to be played.
     *
     * @param players at least two
     * @param pairs pairs of games of each duel
     * @param seed of the first duel; the next has the next number, and so on
     * @param luck whether to measure luck in the duels in which a net plays
     */
    public Tournament(List<Entrant> players, long pairs, long seed, boolean luck) {
        this.players = List.copyOf(players);
        this.pairs = pairs;
        this.seed = seed;
        this.luck = luck;
    }

    /**
     * Number of games of the whole tournament.
     *
     * @return two for each pair
     */
    public long games() {
        long n = players.size();
        return n * (n - 1) / 2 * 2 * pairs;
    }

    /**
     * Plays all duels: neighbours in the list first, then those two apart, and so on, so that a tournament cut short
     * connects as many players as can be.
     *
     * @param threads number of threads
     * @param progress told of the games played so far in all, and of the duel under way
     * @return the duels played, the last perhaps in part, none with fewer than two pairs
     */
    public List<Match> run(int threads, BiConsumer<Long, String> progress) {
        return run(duel -> duel.run(threads), progress);
    }

    /**
     * Plays all duels on other machines, in the same order.
     *
     * @param workforce the machines, closed by who opened them
     * @param progress told of the games played so far in all, and of the duel under way
     * @return the duels that {@link #run(int, BiConsumer)} plays
     */
    public List<Match> run(Workforce workforce, BiConsumer<Long, String> progress) {
        return run(duel -> duel.run(workforce), progress);
    }

    private List<Match> run(Function<Duel, Tally> how, BiConsumer<Long, String> progress) {
        List<Match> matches = new ArrayList<>();
        for (int apart = 1; apart < players.size(); apart++) {
            for (int a = 0; a + apart < players.size() && !stopped; a++) {
                Match match = play(a, a + apart, matches.size(), how, progress);
                if (match.tally().pairs() > 1 || !stopped) {
                    matches.add(match);
                }
            }
        }
        return matches;
    }

    private Match play(int a, int b, int number, Function<Duel, Tally> how, BiConsumer<Long, String> progress) {
        Entrant one = players.get(a);
        Entrant other = players.get(b);
        boolean valued = luck && (one.valuers().isPresent() || other.valuers().isPresent());
        DuelSettings plain = DuelSettings.fullGames(pairs, seed + number);
        String note = one.name() + " against " + other.name();
        Duel duel = new Duel(
                one,
                other,
                valued ? plain.withLuck() : plain,
                soFar -> progress.accept(2 * pairs * number + soFar.games(), note));
        current = duel;
        // Asked only now: a stop between the loop and here would find no duel, or the last one.
        if (stopped) {
            return new Match(a, b, seed + number, Tally.NONE);
        }
        return new Match(a, b, seed + number, how.apply(duel));
    }

    /** Ends the tournament soon, from any thread. */
    public void stop() {
        stopped = true;
        Duel running = current;
        if (running != null) {
            running.stop();
        }
    }
}
