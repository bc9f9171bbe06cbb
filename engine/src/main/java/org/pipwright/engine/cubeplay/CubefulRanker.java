package org.pipwright.engine.cubeplay;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;
import org.pipwright.engine.search.Searched;

/**
 * Ranks the plays of a roll by what they leave with the cube where it stands: points in money play, the chance to win the
 * match at the score. The position after each play is valued from the opponent's view, who may double next. Results do
 * not depend on the number of threads. To be asked from one thread at a time.
 */
public final class CubefulRanker implements AutoCloseable {
    private final ParallelLookahead search;
    private final CubeTerms terms;

    /**
     * A ranker.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param terms makes what is played for, seen from the side that plays, for one thread
     * @param threads number of threads, at least 1
     */
    public CubefulRanker(Supplier<Judgement> judgements, Supplier<CubeTerms> terms, int threads) {
        this(
                new ParallelLookahead(
                        judgements,
                        () -> {
                            CubeTerms own = terms.get();
                            return stakes -> own;
                        },
                        LookaheadSettings.DEFAULT,
                        threads,
                        ParallelLookahead.memory(),
                        () -> false),
                terms.get());
    }

    /**
     * A ranker by a search that knows the terms; closing one closes both.
     *
     * @param search what it searches with
     * @param terms what is played for, seen from the side that plays
     */
    public CubefulRanker(ParallelLookahead search, CubeTerms terms) {
        this.search = search;
        this.terms = terms;
    }

    /**
     * Ranks all plays of a roll. With lookahead, plays that fall behind are left with a smaller one; each says its own.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param cube the cube, seen from the side that plays
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return every play, distinct by resulting position; those with the largest lookahead first, each group best first
     * @throws IllegalArgumentException if the game is over or the lookahead out of range
     */
    public List<CubefulPlay> rank(Position position, Roll roll, CubeState cube, int lookahead) {
        List<Play> plays = Plays.legal(position, roll);
        return ranking(
                plays,
                cube,
                search.search(position.toPlanes(), results(plays), plays.size(), terms.stakes(), cube, lookahead));
    }

    /**
     * Ranks all plays of a roll with more and more lookahead until the time is up. The first line tells how far it got.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param cube the cube, seen from the side that plays
     * @param time how long to search
     * @return every play, as {@link #rank(Position, Roll, CubeState, int)} gives them for the lookahead that was reached
     * @throws IllegalArgumentException if the game is over
     */
    public List<CubefulPlay> rank(Position position, Roll roll, CubeState cube, Duration time) {
        List<Play> plays = Plays.legal(position, roll);
        return ranking(
                plays,
                cube,
                search.search(position.toPlanes(), results(plays), plays.size(), terms.stakes(), cube, time));
    }

    /**
     * Ranks some plays of a roll among themselves, all with the same lookahead.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param plays at least one play of that position and roll; one given twice counts once
     * @param cube the cube, seen from the side that plays
     * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
     * @return these plays, best first
     * @throws IllegalArgumentException if a play is not one of this position and roll, or there is none
     */
    public List<CubefulPlay> rank(Position position, Roll roll, List<Play> plays, CubeState cube, int lookahead) {
        Map<Position, Play> distinct = new LinkedHashMap<>();
        for (Play play : plays) {
            distinct.putIfAbsent(Plays.to(position, roll, play.result()).result(), play);
        }
        if (distinct.isEmpty()) {
            throw new IllegalArgumentException("no plays to rank: give at least one");
        }
        List<Play> some = List.copyOf(distinct.values());
        return ranking(
                some,
                cube,
                search.searchAll(position.toPlanes(), results(some), some.size(), terms.stakes(), cube, lookahead));
    }

    private static int[] results(List<Play> plays) {
        int[] results = new int[plays.size() * Planes.STRIDE];
        for (int i = 0; i < plays.size(); i++) {
            plays.get(i).result().copyTo(results, i * Planes.STRIDE);
        }
        return results;
    }

    /** Without lookahead plays may differ by little: then they are valued by the model itself, not by its quick form. */
    private List<CubefulPlay> ranking(List<Play> plays, CubeState cube, List<Searched> searched) {
        boolean looked = searched.stream().anyMatch(each -> each.lookahead() > 0);
        List<CubefulPlay> ranking = new ArrayList<>();
        for (Searched each : searched) {
            Play play = plays.get(each.result());
            Position next = play.next();
            boolean exact = next.finished()
                    || terms.swapped().exact(next, cube.swapped()).isPresent();
            double value = looked || exact
                    ? each.value()
                    : byModel(next, each.outcomes().swapped(), cube);
            ranking.add(new CubefulPlay(play, each.outcomes(), each.lookahead(), value, exact));
        }
        return CubefulPlay.inOrder(ranking, terms.point(cube));
    }

    private double byModel(Position next, Outcomes outcomes, CubeState cube) {
        return terms.toOther(terms.swapped()
                .curves(next, GammonShares.of(outcomes), cube.swapped())
                .at(outcomes.win())
                .best());
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        search.close();
    }
}
