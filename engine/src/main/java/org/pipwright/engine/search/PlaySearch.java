package org.pipwright.engine.search;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;

/**
 * Ranks plays and gives chances with lookahead, on all cores. The results do not depend on the number of threads. To be
 * asked from one thread at a time.
 */
public final class PlaySearch implements AutoCloseable {
    private final ParallelLookahead search;

    /**
     * A search.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param settings how to narrow plays down
     * @param threads number of threads, at least 1
     */
    public PlaySearch(Supplier<Judgement> judgements, LookaheadSettings settings, int threads) {
        this(new ParallelLookahead(judgements, settings, threads));
    }

    /**
     * Another view of a search; closing one closes both.
     *
     * @param search what it searches with
     */
    public PlaySearch(ParallelLookahead search) {
        this.search = search;
    }

    /**
     * A search by the networks of a model with the default settings and a thread for each core.
     *
     * @param model the model
     */
    public PlaySearch(Model model) {
        this(
                () -> Judgement.by(new NetworkEvaluator(model)),
                LookaheadSettings.DEFAULT,
                Runtime.getRuntime().availableProcessors());
    }

    /**
     * Ranks all plays of a roll. Plays that fall behind are left with a smaller lookahead, as the settings say; each line
     * tells its own.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return every play, distinct by resulting position; those with the largest lookahead first, each group best first
     * @throws IllegalArgumentException if the game is over or the lookahead out of range
     */
    public List<RankedPlay> rank(Position position, Roll roll, int lookahead) {
        List<Play> plays = Plays.legal(position, roll);
        return ordered(plays, search.search(position.toPlanes(), Plays.results(plays), plays.size(), lookahead));
    }

    /**
     * Ranks all plays of a roll with more and more lookahead until the time is up. The first line tells how far it got.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param time how long to search
     * @return every play, as {@link #rank(Position, Roll, int)} gives them for the lookahead that was reached
     * @throws IllegalArgumentException if the game is over
     */
    public List<RankedPlay> rank(Position position, Roll roll, Duration time) {
        List<Play> plays = Plays.legal(position, roll);
        return ordered(plays, search.search(position.toPlanes(), Plays.results(plays), plays.size(), time));
    }

    /**
     * Ranks some plays of a roll among themselves, all with the same lookahead.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param plays at least one play of that position and roll; one given twice counts once
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return these plays, best first
     * @throws IllegalArgumentException if a play is not one of this position and roll, or there is none
     */
    public List<RankedPlay> rank(Position position, Roll roll, List<Play> plays, int lookahead) {
        List<Play> some = Plays.distinct(position, roll, plays);
        if (some.isEmpty()) {
            throw new IllegalArgumentException("no plays to rank: give at least one");
        }
        return ordered(some, search.searchAll(position.toPlanes(), Plays.results(some), some.size(), lookahead));
    }

    /**
     * The chances before the roll.
     *
     * @param position an unfinished position
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return chances of the side on roll
     * @throws IllegalArgumentException if the game is over or the lookahead out of range
     */
    public Outcomes odds(Position position, int lookahead) {
        requireUnfinished(position);
        return search.evaluate(position.toPlanes(), lookahead);
    }

    /**
     * The chances before the roll, with more and more lookahead until the time is up.
     *
     * @param position an unfinished position
     * @param time how long to search
     * @return chances of the side on roll, with the lookahead that was reached
     * @throws IllegalArgumentException if the game is over
     */
    public Searched odds(Position position, Duration time) {
        requireUnfinished(position);
        return search.evaluate(position.toPlanes(), time);
    }

    /**
     * The best reply to each roll.
     *
     * @param position an unfinished position
     * @param lookahead number of rolls after the reply to average over, 0 to {@value LookaheadSettings#MAX} - 1; the mean
     *     over the rolls is the position's value with one more
     * @return 21 replies, in the order of {@link Roll#all()}
     * @throws IllegalArgumentException if the game is over or the lookahead out of range
     */
    public List<RollReply> replies(Position position, int lookahead) {
        requireUnfinished(position);
        int[] results = new int[Roll.COUNT * Planes.STRIDE];
        float[] chances = search.replies(position.toPlanes(), lookahead, results);
        List<RollReply> replies = new ArrayList<>(Roll.COUNT);
        for (Roll roll : Roll.all()) {
            Play play = Plays.to(position, roll, results, roll.index() * Planes.STRIDE);
            replies.add(new RollReply(roll, play, Outcomes.of(chances, roll.index() * Outcomes.COUNT)));
        }
        return replies;
    }

    private static void requireUnfinished(Position position) {
        if (position.finished()) {
            throw new IllegalArgumentException("the game is over: no roll follows");
        }
    }

    private static List<RankedPlay> ordered(List<Play> plays, List<Searched> searched) {
        List<RankedPlay.Evaluated> evaluated = new ArrayList<>(plays.size());
        for (Searched each : searched) {
            Depth depth = new Depth(each.lookahead());
            evaluated.add(new RankedPlay.Evaluated(plays.get(each.result()), each.outcomes(), depth));
        }
        return RankedPlay.inOrder(evaluated);
    }

    /**
     * Number of positions valued by the evaluators so far.
     *
     * @return at least 0
     */
    public long evaluations() {
        return search.evaluations();
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        search.close();
    }
}
