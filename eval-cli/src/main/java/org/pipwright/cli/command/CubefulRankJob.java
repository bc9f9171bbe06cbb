package org.pipwright.cli.command;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.cli.report.CubefulRankReport;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Listing;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;

/** Rankings with the cube, from what was asked for to their reports, one after another. */
final class CubefulRankJob implements AutoCloseable {
    private final CubeJudges judges;
    private final NetLabel net;
    private final int lookahead;
    private final Optional<Duration> time;
    private final CubefulRanker ranker;

    CubefulRankJob(CubeJudges judges, NetLabel net, SearchOptions search) {
        this.judges = judges;
        this.net = net;
        lookahead = search.lookahead();
        time = search.time();
        ranker = judges.ranker();
    }

    /**
     * Ranks plays of a roll.
     *
     * @param named which; none for all
     * @param most how many to show
     * @param games how to play the best of them out, if they are
     * @param explaining gathers facts about plays, whose costs are in points
     */
    CubefulRankReport report(
            Position from,
            Roll roll,
            List<Play> named,
            int most,
            Optional<GamesOption> games,
            Function<List<RankedPlay>, Optional<Explanation>> explaining) {
        List<CubefulPlay> ranking = ranking(from, roll, named);
        if (games.isPresent()) {
            List<Play> some = named.isEmpty() ? Candidates.ofCubeful(ranking, Candidates.MOST) : named;
            ranking = games.get().playOut(ranking, some, judges);
        }
        double bestEquity = ranking.stream()
                .mapToDouble(play -> play.outcomes().equity())
                .max()
                .orElseThrow();
        List<CubefulPlay> shown = Listing.byValue(ranking, most, CubefulPlay::value);
        return new CubefulRankReport(
                from,
                roll,
                judges.cube(),
                judges.stakes(),
                net,
                named.isEmpty() ? ranking.size() : Plays.legal(from, roll).size(),
                ranking.size(),
                shown,
                bestEquity,
                explaining.apply(shown.stream().map(CubefulRankJob::inPoints).collect(Collectors.toList())));
    }

    private List<CubefulPlay> ranking(Position from, Roll roll, List<Play> named) {
        CubeState cube = judges.cube();
        if (!named.isEmpty()) {
            return ranker.rank(from, roll, named, cube, lookahead);
        }
        return time.isPresent() ? ranker.rank(from, roll, cube, time.get()) : ranker.rank(from, roll, cube, lookahead);
    }

    private static RankedPlay inPoints(CubefulPlay play) {
        return new RankedPlay(
                play.play(), play.outcomes(), play.outcomes().equity(), play.points(), new Depth(play.lookahead()));
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        ranker.close();
    }
}
