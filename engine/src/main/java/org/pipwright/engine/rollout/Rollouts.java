package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Judging;

/**
 * Plays positions out many times: without the cube to learn their chances, or with it, where both sides double, take, pass
 * and move for points or for the match, as their terms judge. Every candidate gets the same dice. Games end early where
 * the rest is known exactly. The numbers depend on settings, judgement and terms alone, not on the number of threads. To be
 * asked from one thread at a time.
 */
public final class Rollouts implements AutoCloseable {
    /** Files in which the numbers of a rollout are kept, so that it can be stopped and resumed. */
    public static final WorkFile.Kind FILES = MomentsText.KIND;

    private final RolloutSettings settings;
    private final Players players;

    /**
     * Rollouts without the cube.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param settings what decides a rollout
     * @param threads number of threads, at least 1
     */
    public Rollouts(Supplier<Judgement> judgements, RolloutSettings settings, int threads) {
        this(
                judgements,
                () -> stakes -> {
                    throw new IllegalStateException("nothing judges the cube here");
                },
                settings,
                threads);
    }

    /**
     * Rollouts with and without the cube.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param terms makes the terms of one thread: how to judge under given stakes, seen from the side on roll
     * @param settings what decides a rollout; its lookahead is that of checkers and cube
     * @param threads number of threads, at least 1
     */
    public Rollouts(
            Supplier<Judgement> judgements,
            Supplier<? extends Function<Stakes, CubeTerms>> terms,
            RolloutSettings settings,
            int threads) {
        this.settings = settings;
        players = new CrewOfPlayers(threads, () -> new Trial(judgements.get(), terms.get(), settings));
    }

    /**
     * Rollouts with and without the cube, played by other machines.
     *
     * @param judging what they judge with
     * @param settings what decides a rollout; its lookahead is that of checkers and cube
     * @param workforce the machines, closed by who opened them
     */
    public Rollouts(Shared<? extends Judging> judging, RolloutSettings settings, Workforce workforce) {
        this.settings = settings;
        players = new PlayersElsewhere(judging, settings, workforce);
    }

    /**
     * Compares plays of a roll.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param candidates at least one play of that position and roll
     * @param stakes what is played for, seen from the side that plays
     * @param cube the cube, seen from that side, per unit of which values are given; {@link CubeState#START} without one
     * @param file where the numbers are kept and where to go on from; what makes the terms must be among what it names as
     *     judging
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end, for the side that plays; candidates by their index in the list
     * @throws IllegalArgumentException if there are no candidates, or one is not a play of this position and roll
     * @throws CancellationException if the listener stops it during the first round
     * @throws InvalidWorkFileException if the file belongs to another rollout or is damaged
     */
    public RolloutReport compare(
            Position position,
            Roll roll,
            List<Play> candidates,
            Stakes stakes,
            CubeState cube,
            WorkFile file,
            RolloutListener listener) {
        if (candidates.isEmpty()) {
            throw new IllegalArgumentException("no plays to roll out: give at least one");
        }
        candidates.forEach(play -> Plays.to(position, roll, play.result()));
        List<Start> starts =
                candidates.stream().map(play -> Start.after(play, cube)).collect(Collectors.toList());
        return compare(starts, stakes, cube.value(), file, listener);
    }

    /**
     * Compares plays of a roll without the cube, and keeps nothing.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param candidates at least one play of that position and roll
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end
     * @throws IllegalArgumentException if there are no candidates, or one is not a play of this position and roll
     * @throws CancellationException if the listener stops it during the first round
     */
    public RolloutReport compare(Position position, Roll roll, List<Play> candidates, RolloutListener listener) {
        return compare(position, roll, candidates, new CubelessStakes(), CubeState.START, WorkFile.NONE, listener);
    }

    /**
     * Compares candidates.
     *
     * @param starts at least one; all count results for the same side
     * @param stakes what is played for, seen from the side that counts
     * @param unit cube that values are given per unit of: as a rule the one asked about
     * @param file where the numbers are kept and where to go on from; what makes the terms must be among what it names as
     *     judging
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end, for the side that counts; candidates by their index in the list
     * @throws CancellationException if the listener stops it during the first round
     * @throws InvalidWorkFileException if the file belongs to another rollout or is damaged
     */
    public RolloutReport compare(List<Start> starts, Stakes stakes, int unit, WorkFile file, RolloutListener listener) {
        boolean withCube = !(stakes instanceof CubelessStakes);
        return run(
                starts, stakes, unit, file, moments -> RolloutReport.of(moments, withCube, settings.sure()), listener);
    }

    /**
     * The chances of a position before the roll, without the cube.
     *
     * @param position an unfinished position
     * @param file where the numbers are kept and where to go on from
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end: one line, for the side on roll
     * @throws IllegalArgumentException if the game is over
     * @throws CancellationException if the listener stops it during the first round
     * @throws InvalidWorkFileException if the file belongs to another rollout or is damaged
     */
    public RolloutReport odds(Position position, WorkFile file, RolloutListener listener) {
        if (position.finished()) {
            throw new IllegalArgumentException("the game is over: no roll follows");
        }
        Start start = new Start(position, CubeState.START, false, true);
        return compare(List.of(start), new CubelessStakes(), 1, file, listener);
    }

    /**
     * Plays the cube actions before a roll out: rolling, a double that is taken and, where allowed, one that is beavered; by
     * the numbers {@link ActionStanding#ROLL} and so on. What a pass gives is known. Stops, where the settings ask for that,
     * once each choice between them is clear or closer than anybody has to know.
     *
     * @param position an unfinished position before the roll
     * @param cube the cube, seen from the side on roll
     * @param stakes what is played for, seen from that side
     * @param file where the numbers are kept; what makes the terms must be among what it names as judging
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end, with what they say of the actions, for the side on roll, per unit of the cube
     * @throws CancellationException if the listener stops it during the first round
     * @throws InvalidWorkFileException if the file belongs to another rollout or is damaged
     */
    public RolloutReport actions(
            Position position, CubeState cube, Stakes stakes, WorkFile file, RolloutListener listener) {
        List<Start> starts = stakes.cubesToRollWith(cube).stream()
                .map(each -> Start.rolling(position, each))
                .collect(Collectors.toList());
        boolean mayDouble = stakes.mayDouble(cube);
        CubeTerms terms = players.terms(stakes);
        double pass = terms.ended(cube.value()) / terms.inAll(1, cube);
        ActionStanding.Asked asked =
                new ActionStanding.Asked(mayDouble, mayDouble && stakes.mayBeaver(cube), pass, terms.point(cube));
        return run(
                starts,
                stakes,
                cube.value(),
                file,
                moments -> RolloutReport.ofActions(moments, asked, settings.sure()),
                listener);
    }

    private RolloutReport run(
            List<Start> starts,
            Stakes stakes,
            int unit,
            WorkFile file,
            Function<Moments, RolloutReport> report,
            RolloutListener listener) {
        int per = stakes instanceof MatchStakes ? 1 : unit;
        return new Rounds(players, settings, new Candidates(starts, stakes, per))
                .run(identity(starts, stakes, per), file, report, listener);
    }

    /** All that decides the numbers but judgement and terms, one thing a line. */
    private List<String> identity(List<Start> starts, Stakes stakes, int per) {
        List<String> lines = new ArrayList<>(settings.identity());
        boolean withCube = !(stakes instanceof CubelessStakes);
        if (withCube) {
            lines.add(text(stakes));
            lines.add("values per " + per);
        }
        starts.forEach(start ->
                lines.add((start.counted() ? "before " : "after ") + start.position() + (withCube ? cube(start) : "")));
        return lines;
    }

    private static String cube(Start start) {
        return ", cube " + start.cube().value() + " " + start.cube().owner() + (start.rolling() ? ", rolling" : "");
    }

    private static String text(Stakes stakes) {
        if (stakes instanceof MatchStakes) {
            MatchScore score = ((MatchStakes) stakes).score();
            return "match " + score.mine() + "," + score.theirs() + ", crawford " + score.crawford();
        }
        MoneyStakes money = (MoneyStakes) stakes;
        return "money, jacoby " + money.jacoby() + ", beavers " + money.beavers();
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        players.close();
    }
}
