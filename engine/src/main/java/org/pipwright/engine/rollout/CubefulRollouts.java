package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/**
 * Plays positions out many times with the cube: both sides double, take, pass and move for points or for the match, as
 * their terms judge. Every candidate gets the same dice. Games end early where the terms know the exact value. The numbers
 * depend on settings, evaluator and terms alone, not on the number of threads. To be asked from one thread at a time.
 */
public final class CubefulRollouts implements AutoCloseable {
    private final RolloutSettings settings;
    private final Crew<CubefulTrial> crew;

    /**
     * Rollouts with given settings.
     *
     * @param evaluators makes an evaluator for one thread; all equal
     * @param terms makes the terms of one thread: how to judge under given stakes, seen from the side on roll
     * @param settings what decides a rollout; its lookahead is that of checkers and cube
     * @param threads number of threads, at least 1
     */
    public CubefulRollouts(
            Supplier<PositionEvaluator> evaluators,
            Supplier<? extends Function<Stakes, CubeTerms>> terms,
            RolloutSettings settings,
            int threads) {
        this.settings = settings;
        crew = new Crew<>(threads, () -> new CubefulTrial(evaluators.get(), terms.get(), settings));
    }

    /**
     * Plays candidates out.
     *
     * @param starts at least one; all count results for the same side
     * @param stakes what is played for, seen from the side that counts
     * @param unit cube that values are given per unit of: as a rule the one asked about
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end, for the side that counts; candidates by their index in the list
     * @throws CancellationException if the listener stops it during the first round
     */
    public CubefulRolloutReport compare(
            List<CubefulStart> starts,
            Stakes stakes,
            int unit,
            RolloutListener<? super CubefulRolloutReport> listener) {
        return compare(starts, stakes, unit, RolloutFile.NONE, listener);
    }

    /**
     * Plays candidates out from where a file has left off, and keeps the file up to date.
     *
     * @param starts at least one; all count results for the same side
     * @param stakes what is played for, seen from the side that counts
     * @param unit cube that values are given per unit of: as a rule the one asked about
     * @param file where the numbers are kept; what makes the terms must be among what it names as judging
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end, for the side that counts; candidates by their index in the list
     * @throws CancellationException if the listener stops it during the first round
     * @throws InvalidWorkFileException if the file belongs to another rollout or is damaged
     */
    public CubefulRolloutReport compare(
            List<CubefulStart> starts,
            Stakes stakes,
            int unit,
            RolloutFile file,
            RolloutListener<? super CubefulRolloutReport> listener) {
        return run(
                starts,
                stakes,
                unit,
                file,
                moments -> CubefulRolloutReport.ofPlays(moments, settings.sure()),
                listener);
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
    public CubefulRolloutReport actions(
            Position position,
            CubeState cube,
            Stakes stakes,
            RolloutFile file,
            RolloutListener<? super CubefulRolloutReport> listener) {
        List<CubefulStart> starts = new ArrayList<>(List.of(CubefulStart.rolling(position, cube)));
        boolean mayDouble = stakes.mayDouble(cube);
        boolean mayBeaver = mayDouble && stakes.mayBeaver(cube);
        if (mayDouble) {
            starts.add(CubefulStart.rolling(position, cube.taken()));
        }
        if (mayBeaver) {
            starts.add(CubefulStart.rolling(position, cube.beavered()));
        }
        CubeTerms terms = crew.workers().get(0).terms(stakes);
        double pass = terms.ended(cube.value()) / terms.inAll(1, cube);
        ActionStanding.Asked asked = new ActionStanding.Asked(mayDouble, mayBeaver, pass, terms.point(cube));
        return run(
                starts,
                stakes,
                cube.value(),
                file,
                moments -> CubefulRolloutReport.ofActions(moments, asked, settings.sure()),
                listener);
    }

    private CubefulRolloutReport run(
            List<CubefulStart> starts,
            Stakes stakes,
            int unit,
            RolloutFile file,
            Function<Moments, CubefulRolloutReport> report,
            RolloutListener<? super CubefulRolloutReport> listener) {
        int per = stakes instanceof MatchStakes ? 1 : unit;
        Rounds.Playing<CubefulTrial> playing = (trial, candidate, number, results, at) -> {
            CubefulStart start = starts.get(candidate);
            Stakes seen = start.counted() ? stakes : stakes.swapped();
            trial.play(start, seen, number, listener::stopped, results, at);
            results[at + Moments.VALUE] /= per;
            results[at + Moments.PLAIN] /= per;
        };
        return new Rounds<>(crew, settings, playing)
                .run(
                        identity(starts, stakes, per),
                        starts.size(),
                        CubefulTrial.NUMBERS,
                        file,
                        report,
                        CubefulRolloutReport::clear,
                        listener);
    }

    /** All that decides the numbers but net and terms, one thing a line. */
    private List<String> identity(List<CubefulStart> starts, Stakes stakes, int per) {
        List<String> lines = new ArrayList<>(settings.identity());
        lines.add(text(stakes));
        lines.add("values per " + per);
        starts.forEach(start -> lines.add((start.counted() ? "before " : "after ") + start.position() + ", cube "
                + start.cube().value() + " " + start.cube().owner() + (start.rolling() ? ", rolling" : "")));
        return lines;
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
        crew.close();
    }
}
