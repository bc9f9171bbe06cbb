package org.pipwright.engine.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.IntStream;
import org.pipwright.engine.bearoff.RaceJudge;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;

/**
 * Races beyond the tables, which are simulated instead of asking the net: that is far more accurate, whatever the net's
 * lookahead, and takes some hundredths of a second each.
 */
final class Races implements AutoCloseable {
    private final Knowledge knowledge;
    private final int threads;
    private Crew<RaceJudge> crew;

    Races(Knowledge knowledge, int threads) {
        this.knowledge = knowledge;
        this.threads = threads;
    }

    /** What is known of a race for the side on roll. */
    RaceOutlook outlook(Position race) {
        return judges().workers().get(0).outlook(race);
    }

    private Crew<RaceJudge> judges() {
        crew = crew == null
                ? new Crew<>(threads, () -> new RaceJudge(knowledge.tables().orElseThrow()))
                : crew;
        return crew;
    }

    /**
     * A ranking with the plays that lead to such races valued anew; they count as deep as the deepest of the others.
     *
     * @param ranking best first
     * @param value what a play is worth whose chances, for the side that plays, are known
     * @param cubeful whether that is with a cube
     * @return the plays, to be ordered anew
     */
    List<PlayVerdict> refined(List<PlayVerdict> ranking, ToDoubleBiFunction<Play, Outcomes> value, boolean cubeful) {
        int[] races = IntStream.range(0, ranking.size())
                .filter(i -> knowledge.simulated(ranking.get(i).play().result()))
                .toArray();
        if (races.length == 0) {
            return ranking;
        }
        RaceOutlook[] outlooks = new RaceOutlook[ranking.size()];
        judges().run(
                        races.length,
                        (judge, task) -> outlooks[races[task]] =
                                judge.outlook(ranking.get(races[task]).play().next()));
        Depth deepest = ranking.get(0).depth();
        List<PlayVerdict> mixed = new ArrayList<>(ranking);
        for (int race : races) {
            Play play = ranking.get(race).play();
            Outcomes outcomes = outlooks[race].outcomes().swapped();
            double worth = value.applyAsDouble(play, outcomes);
            mixed.set(race, new PlayVerdict(play, worth, outcomes, deepest, basis(outlooks[race], cubeful)));
        }
        return mixed;
    }

    /** What a value rests on; with a cube it comes from a model, which exact chances do not make exact. */
    static Basis basis(RaceOutlook race, boolean cubeful) {
        return cubeful && race.basis() == Basis.EXACT ? Basis.DISTRIBUTIONS : race.basis();
    }

    @Override
    public void close() {
        if (crew != null) {
            crew.close();
        }
    }
}
