package org.pipwright.engine.cubeplay;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubefulSearch;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.Narrowing;

/**
 * Ranks the plays of a roll by what they leave with the cube where it stands: points in money play, the chance to win the
 * match at the score. The position after each play is valued from the opponent's view, who may double next. Results do
 * not depend on the number of threads. To be asked from one thread at a time.
 */
public final class CubefulRanker implements AutoCloseable {
    private static final List<Narrowing> NARROWING = LookaheadSettings.DEFAULT.root();

    private final Crew<Worker> crew;
    private volatile long deadline;
    private volatile boolean timed;

    /** What one thread works with. */
    private static final class Worker {
        private final Judgement judgement;
        private final CubefulSearch search;
        private final Lookahead cubeless;
        private final CubeTerms terms;

        Worker(Judgement patient, CubeTerms terms, BooleanSupplier late) {
            judgement = new Judgement(new StoppableEvaluator(patient.evaluator(), late), patient.horizon());
            this.terms = terms;
            search = new CubefulSearch(judgement.evaluator());
            cubeless = new Lookahead(judgement, LookaheadSettings.DEFAULT);
        }
    }

    /** The plays of a roll and what is known of them so far. */
    private static final class Standings {
        private final List<Play> plays;
        private final int[] results;
        private final float[] chances;
        private final double[] value;
        private final int[] lookahead;
        private final boolean[] exact;

        Standings(List<Play> plays) {
            this.plays = plays;
            results = new int[plays.size() * Planes.STRIDE];
            chances = new float[plays.size() * Outcomes.COUNT];
            value = new double[plays.size()];
            lookahead = new int[plays.size()];
            exact = new boolean[plays.size()];
            for (int i = 0; i < plays.size(); i++) {
                plays.get(i).result().copyTo(results, i * Planes.STRIDE);
            }
        }

        Standings(Standings other) {
            plays = other.plays;
            results = other.results;
            chances = other.chances.clone();
            value = other.value.clone();
            lookahead = other.lookahead.clone();
            exact = other.exact;
        }

        /** Deepest first, then by value, equals as given. */
        List<Integer> order() {
            return IntStream.range(0, plays.size())
                    .boxed()
                    .sorted(Comparator.<Integer>comparingInt(i -> -lookahead[i]).thenComparingDouble(i -> -value[i]))
                    .collect(Collectors.toList());
        }
    }

    /**
     * A ranker.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param terms makes what is played for, seen from the side that plays, for one thread
     * @param threads number of threads, at least 1
     */
    public CubefulRanker(Supplier<Judgement> judgements, Supplier<CubeTerms> terms, int threads) {
        crew = new Crew<>(threads, () -> new Worker(judgements.get(), terms.get(), this::late));
    }

    private boolean late() {
        return timed && System.nanoTime() - deadline > 0;
    }

    /**
     * Ranks all plays of a roll. With lookahead, plays that fall behind are left with a smaller one; each says its own.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param cube the cube, seen from the side that plays
     * @param lookahead future rolls to average over, 0 to {@value CubefulSearch#MOST}
     * @return every play, distinct by resulting position; those with the largest lookahead first, each group best first
     * @throws IllegalArgumentException if the game is over or the lookahead out of range
     */
    public List<CubefulPlay> rank(Position position, Roll roll, CubeState cube, int lookahead) {
        requireLookahead(lookahead);
        Standings standings = begin(position, Plays.legal(position, roll), cube);
        for (int next = 1; next <= lookahead; next++) {
            List<Integer> kept = kept(standings, next, cube);
            next = kept.size() == 1 ? lookahead : next;
            standings = deepened(standings, kept, cube, next);
        }
        return ranking(standings, cube);
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
        Standings standings = begin(position, Plays.legal(position, roll), cube);
        deadline = System.nanoTime() + time.toNanos();
        timed = true;
        try {
            for (int next = 1; next <= CubefulSearch.MOST; next++) {
                standings = deepened(standings, kept(standings, next, cube), cube, next);
            }
        } catch (CancellationException e) {
            // Time is up: the last finished step stands.
            return ranking(standings, cube);
        } finally {
            timed = false;
        }
        return ranking(standings, cube);
    }

    /**
     * Ranks some plays of a roll among themselves, all with the same lookahead.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param plays at least one play of that position and roll; one given twice counts once
     * @param cube the cube, seen from the side that plays
     * @param lookahead future rolls to average over, 0 to {@value CubefulSearch#MOST}
     * @return these plays, best first
     * @throws IllegalArgumentException if a play is not one of this position and roll, or there is none
     */
    public List<CubefulPlay> rank(Position position, Roll roll, List<Play> plays, CubeState cube, int lookahead) {
        requireLookahead(lookahead);
        Map<Position, Play> distinct = new LinkedHashMap<>();
        for (Play play : plays) {
            distinct.putIfAbsent(Plays.to(position, roll, play.result()).result(), play);
        }
        if (distinct.isEmpty()) {
            throw new IllegalArgumentException("no plays to rank: give at least one");
        }
        Standings standings = begin(position, List.copyOf(distinct.values()), cube);
        if (lookahead > 0) {
            standings = deepened(standings, standings.order(), cube, lookahead);
        }
        return ranking(standings, cube);
    }

    private static void requireLookahead(int lookahead) {
        if (lookahead < 0 || lookahead > CubefulSearch.MOST) {
            throw new IllegalArgumentException(
                    "with the cube a lookahead is 0 to " + CubefulSearch.MOST + ", not " + lookahead);
        }
    }

    private Standings begin(Position position, List<Play> plays, CubeState cube) {
        Standings standings = new Standings(plays);
        Worker worker = crew.workers().get(0);
        int[] planes = position.toPlanes();
        worker.judgement.evaluator().evaluateResults(planes, 0, standings.results, plays.size(), standings.chances);
        for (int i = 0; i < plays.size(); i++) {
            Position next = plays.get(i).next();
            standings.exact[i] = next.finished()
                    || worker.terms.swapped().exact(next, cube.swapped()).isPresent();
            standings.value[i] = value(worker.terms, next, Outcomes.of(standings.chances, i * Outcomes.COUNT), cube);
        }
        return standings;
    }

    /** By the model itself, not by its quick form, since plays may differ by little. */
    private static double value(CubeTerms terms, Position next, Outcomes outcomes, CubeState cube) {
        if (next.finished()) {
            return terms.won(GameResult.of(next), cube);
        }
        CubeTerms theirs = terms.swapped();
        Outcomes chances = outcomes.swapped();
        return terms.toOther(theirs.exact(next, cube.swapped())
                .orElseGet(() -> theirs.curves(next, GammonShares.of(chances), cube.swapped())
                        .at(chances.win()))
                .best());
    }

    /** The plays worth a larger lookahead. */
    private List<Integer> kept(Standings standings, int next, CubeState cube) {
        Narrowing narrowing = NARROWING.get(Math.min(next, NARROWING.size()) - 1);
        List<Integer> order = standings.order();
        int deepest = standings.lookahead[order.get(0)];
        double within = narrowing.within() * point(cube);
        return order.stream()
                .limit(narrowing.most())
                .filter(i -> standings.lookahead[i] == deepest
                        && standings.value[i] >= standings.value[order.get(0)] - within)
                .collect(Collectors.toList());
    }

    /** The standings after a step; those before are left as they are, since it may be cut short. */
    private Standings deepened(Standings before, List<Integer> kept, CubeState cube, int lookahead) {
        Standings standings = new Standings(before);
        crew.run(kept.size(), (worker, task) -> {
            int i = kept.get(task);
            standings.lookahead[i] = lookahead;
            if (!standings.exact[i]) {
                int at = i * Planes.STRIDE;
                standings.value[i] = worker.search.worth(standings.results, at, cube, worker.terms, lookahead);
                int[] child = new int[Planes.STRIDE];
                Planes.copySwapped(standings.results, at, child, 0);
                worker.cubeless.evaluate(child, 0, lookahead, standings.chances, i * Outcomes.COUNT);
                Chances.swap(standings.chances, i * Outcomes.COUNT);
            }
        });
        return standings;
    }

    private double point(CubeState cube) {
        return crew.workers().get(0).terms.point(cube);
    }

    private List<CubefulPlay> ranking(Standings standings, CubeState cube) {
        List<CubefulPlay> plays = new ArrayList<>();
        for (int i = 0; i < standings.plays.size(); i++) {
            plays.add(new CubefulPlay(
                    standings.plays.get(i),
                    Outcomes.of(standings.chances, i * Outcomes.COUNT),
                    standings.lookahead[i],
                    standings.value[i],
                    standings.exact[i]));
        }
        return CubefulPlay.inOrder(plays, point(cube));
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        crew.close();
    }
}
